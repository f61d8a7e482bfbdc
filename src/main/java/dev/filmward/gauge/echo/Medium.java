package dev.filmward.gauge.echo;

/**
 * What sound passes through, as far as its echoes are concerned.
 *
 * @param velocityMps longitudinal, through the thickness, m/s
 * @param densityKgm3 kg/m3
 */
public record Medium(String name, double velocityMps, double densityKgm3) {
  private static final double RAYL_IN_MRAYL = 1e6;

  public Medium {
    if (!(velocityMps > 0) || !(densityKgm3 > 0)) {
      throw new IllegalArgumentException(
          name + ": velocity and density are above zero, not " + velocityMps + ", " + densityKgm3);
    }
    if (!Double.isFinite(velocityMps * densityKgm3)) {
      throw new IllegalArgumentException(name + ": velocity and density must be finite");
    }
  }

  /**
   * Characteristic acoustic impedance, density times velocity, in MRayl (L. E. Kinsler and others,
   * Fundamentals of Acoustics, chapter on plane waves, from memory).
   */
  public double impedanceMrayl() {
    return densityKgm3 * velocityMps / RAYL_IN_MRAYL;
  }
}
