package dev.filmward.gauge.calibration;

/**
 * The velocity of layers that a gauge reports as one: what it would have to be set to for the sum
 * of their thicknesses to come out right, {@code sum(d) / sum(d / v)}. Accumulates; for one thread.
 *
 * <p>Source: times of flight add, so it follows from the pulse-echo equation by itself.
 */
public final class EffectiveVelocity {
  private double thicknessUm;
  private double slowness;

  /**
   * Adds a layer.
   *
   * @param um its thickness, above 0
   * @param mps its velocity, above 0
   */
  public void add(double um, double mps) {
    if (!(um > 0) || !(mps > 0)) {
      throw new IllegalArgumentException(
          "a layer of " + um + " um at " + mps + " m/s has no time of flight");
    }
    thicknessUm += um;
    slowness += um / mps;
  }

  /** Metres a second. */
  public double mps() {
    if (!(slowness > 0)) {
      throw new IllegalStateException("no layer was added");
    }
    return thicknessUm / slowness;
  }
}
