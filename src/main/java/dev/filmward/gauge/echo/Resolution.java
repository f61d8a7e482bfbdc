package dev.filmward.gauge.echo;

import dev.filmward.gauge.Gauge;

/** Whether the echoes of a layer's two faces can be told apart. A guide, not a promise. */
public enum Resolution {
  /** The two echoes stand apart. */
  RESOLVED("resolved"),
  /** They overlap; a model of the stack can still be fitted to them, with good values to start. */
  FITTED("fitted"),
  /** They are one echo whose size follows the thickness, and whose shape does not. */
  NOT_RESOLVED("cannot be resolved");

  private final String words;

  Resolution(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /**
   * Thicknesses that part the three, um.
   *
   * <p>Two echoes are apart when the way through and back takes longer than the pulse. A pulse of
   * bandwidth B lasts about 1/B, so from {@code c / (2 B)} on; by another count it lasts 1 to 1.5
   * cycles, so from {@code n c / (2 f)} on (common practice, no source). Both are asked of a layer
   * that counts as resolved, the longer count of cycles included. Below an eighth of the wavelength
   * two echoes of opposite sign have one shape and differ in size alone: M. B. Widess, How thin is
   * a thin bed?, Geophysics 38 (1973) 1176 (from memory).
   *
   * @param pulseUm {@code c / (2 B)}
   * @param oneCycleUm the way of one cycle there and back
   * @param cyclesUm the way of 1.5 cycles
   * @param leastUm an eighth of the wavelength
   */
  public record Limits(double pulseUm, double oneCycleUm, double cyclesUm, double leastUm) {
    private static final double CYCLES = 1.5;
    private static final double EIGHTH = 1.0 / 8;

    /** For sound of a velocity in m/s; m/s over MHz are um. */
    static Limits of(double velocityMps, Gauge gauge) {
      double wavelengthUm = velocityMps / gauge.centreMhz();
      return new Limits(
          wavelengthUm / (2 * gauge.bandwidth()),
          wavelengthUm / 2,
          CYCLES * wavelengthUm / 2,
          EIGHTH * wavelengthUm);
    }

    /** From here on a layer counts as resolved. */
    public double resolvedFromUm() {
      return Math.max(pulseUm, cyclesUm);
    }

    Resolution of(double thicknessUm) {
      if (thicknessUm >= resolvedFromUm()) {
        return RESOLVED;
      }
      return thicknessUm >= leastUm ? FITTED : NOT_RESOLVED;
    }
  }
}
