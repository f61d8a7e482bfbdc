package dev.filmward.gauge.calibration;

/**
 * A sound velocity and the zero offset that goes with it: {@code t = c (tau - tau0) / 2}, in um, ns
 * and m/s {@code t = c (tau - tau0) / 2000}. Immutable.
 *
 * @param mps metres a second, above 0
 * @param offsetNs time of flight at no thickness, ns: couplant, probe face; 0 where unknown
 */
public record Velocity(double mps, double offsetNs) {
  private static final double NS_MPS_PER_UM = 2000;
  private static final double GREATEST_MPS = 20_000;

  public Velocity {
    if (!(mps > 0 && mps <= GREATEST_MPS)) {
      throw new IllegalArgumentException(
          "a sound velocity is in m/s, above 0 up to 20000 (1950 for LDPE), not " + mps);
    }
    if (!Double.isFinite(offsetNs)) {
      throw new IllegalArgumentException("a zero offset is a time in ns, not " + offsetNs);
    }
  }

  /** Without a zero offset. */
  public static Velocity of(double mps) {
    return new Velocity(mps, 0);
  }

  /** The time of flight that a thickness shown at this velocity was worked out from, ns. */
  public double flightNs(double thicknessUm) {
    return NS_MPS_PER_UM * thicknessUm / mps + offsetNs;
  }

  /** The thickness that a time of flight means, um. */
  public double thicknessUm(double flightNs) {
    return mps * (flightNs - offsetNs) / NS_MPS_PER_UM;
  }
}
