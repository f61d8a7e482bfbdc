package dev.filmward.chart;

import java.io.Serializable;

/**
 * How cumulative sums are charted, in standard deviations of a point. Immutable.
 *
 * <p>Source: ISO 7870-4; J. M. Lucas and R. B. Crosier, Fast initial response for CUSUM quality
 * control schemes, Technometrics 24 (1982) 199, for the head start.
 *
 * @param allowance k, half the shift to be seen, not negative
 * @param limit h, above 0
 * @param headStart where both sums start, from 0 to below the limit; half the limit makes a fault
 *     that is there from the start seen sooner
 */
public record CusumDesign(double allowance, double limit, double headStart)
    implements Serializable {
  private static final long serialVersionUID = 1L;

  public CusumDesign {
    if (!(allowance >= 0) || !(limit > 0) || !(headStart >= 0 && headStart < limit)) {
      throw new IllegalArgumentException(
          "no cumulative sum with allowance "
              + allowance
              + ", limit "
              + limit
              + " and head start "
              + headStart);
    }
  }

  /** Without head start. */
  public static CusumDesign of(double allowance, double limit) {
    return new CusumDesign(allowance, limit, 0);
  }
}
