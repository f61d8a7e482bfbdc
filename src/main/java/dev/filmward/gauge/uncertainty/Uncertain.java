package dev.filmward.gauge.uncertainty;

/**
 * A standard uncertainty and how well it is known itself. Immutable.
 *
 * @param standard one standard uncertainty, in the unit of the quantity
 * @param degrees degrees of freedom behind it; infinite where it is taken as known
 */
public record Uncertain(double standard, double degrees) {

  public Uncertain {
    if (!(standard >= 0) || !Double.isFinite(standard)) {
      throw new IllegalArgumentException("a standard uncertainty is zero or more, not " + standard);
    }
    if (!(degrees > 0)) {
      throw new IllegalArgumentException("degrees of freedom are above zero, not " + degrees);
    }
  }

  /** Taken as known. */
  public static Uncertain of(double standard) {
    return new Uncertain(standard, Double.POSITIVE_INFINITY);
  }

  /**
   * Anywhere within a half-width of the value, with equal probability: half-width over root 3 (JCGM
   * 100, 4.3.7).
   */
  public static Uncertain rectangular(double halfWidth) {
    return of(halfWidth / Math.sqrt(3));
  }

  /**
   * Anywhere between two bounds, also where the value is not in their middle: their distance over
   * root 12 (JCGM 100, 4.3.8).
   */
  public static Uncertain between(double low, double high) {
    return of((high - low) / Math.sqrt(12));
  }

  /** Of the mean of n independent ones. */
  public Uncertain ofMean(int n) {
    if (n < 1) {
      throw new IllegalArgumentException("a mean is of one or more, not " + n);
    }
    return new Uncertain(standard / Math.sqrt(n), degrees);
  }
}
