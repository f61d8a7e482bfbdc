package dev.filmward.stats;

import org.jspecify.annotations.Nullable;

/**
 * Constants and factors of control charts for subgroups of n = 2 to 100 from a normal process,
 * computed to 11 digits or more when first asked for and then kept.
 *
 * <p>d2 and d3 are the mean and standard deviation of the range, c4 the mean of the sample standard
 * deviation, in units of the process standard deviation. The factors turn an average range or
 * standard deviation into limits of three standard deviations; a lower factor is never below 0.
 * Names and formulas as in ISO 7870-2 and ASTM MNL 7. Safe for many threads.
 */
public final class ChartConstants {
  public static final int SMALLEST_SIZE = 2;
  public static final int LARGEST_SIZE = 100;

  /** Without a lock: whoever finds none computes the same once more; a record is seen whole. */
  private static final @Nullable Range[] RANGES = new Range[LARGEST_SIZE + 1];

  private ChartConstants() {}

  private record Range(double mean, double standardDeviation) {}

  /** The integrals shared by all sizes, made when the first range is asked for. */
  private static final class Integrals {
    static final RangeOfNormals SHARED = new RangeOfNormals();
  }

  public static double d2(int n) {
    return range(n).mean();
  }

  public static double d3(int n) {
    return range(n).standardDeviation();
  }

  /**
   * sqrt(2 / (n - 1)) Gamma(n / 2) / Gamma((n - 1) / 2), the ratio of gammas from that of n - 1 by
   * Gamma(x + 1) = x Gamma(x).
   */
  public static double c4(int n) {
    check(n);
    double ratio = 1 / Math.sqrt(Math.PI);
    for (int k = 2; k < n; k++) {
      ratio = (k - 1) / 2.0 / ratio;
    }
    return Math.sqrt(2.0 / (n - 1)) * ratio;
  }

  /**
   * The same for a standard deviation that was pooled from many subgroups, by its degrees of
   * freedom, of which there may be any number: the series of gamma ratios beyond a hundred, to 14
   * digits (N. L. Johnson, S. Kotz and N. Balakrishnan, Continuous Univariate Distributions 1, 2nd
   * ed. (1994), section 13.3).
   */
  public static double c4Pooled(long degrees) {
    if (degrees < 1) {
      throw new IllegalArgumentException("degrees of freedom are above 0, not " + degrees);
    }
    if (degrees < LARGEST_SIZE) {
      return c4((int) degrees + 1);
    }
    double x = 1.0 / degrees;
    return 1
        + x
            * (-1 / 4.0
                + x
                    * (1 / 32.0
                        + x
                            * (5 / 128.0
                                + x * (-21 / 2048.0 + x * (-399 / 8192.0 + x * (869 / 65536.0))))));
  }

  /** 3 / sqrt(n). */
  public static double factorA(int n) {
    check(n);
    return 3 / Math.sqrt(n);
  }

  /** Limits of the mean from the average range. */
  public static double factorA2(int n) {
    return factorA(n) / d2(n);
  }

  /** Limits of the mean from the average standard deviation. */
  public static double factorA3(int n) {
    return factorA(n) / c4(n);
  }

  /** Lower limit of the standard deviation from the average one. */
  public static double factorB3(int n) {
    return Math.max(0, 1 - 3 * c5(n) / c4(n));
  }

  /** Upper limit of the standard deviation from the average one. */
  public static double factorB4(int n) {
    return 1 + 3 * c5(n) / c4(n);
  }

  /** Lower limit of the standard deviation from that of the process. */
  public static double factorB5(int n) {
    return Math.max(0, c4(n) - 3 * c5(n));
  }

  /** Upper limit of the standard deviation from that of the process. */
  public static double factorB6(int n) {
    return c4(n) + 3 * c5(n);
  }

  /** Lower limit of the range from the standard deviation of the process. */
  public static double factorD1(int n) {
    return Math.max(0, d2(n) - 3 * d3(n));
  }

  /** Upper limit of the range from the standard deviation of the process. */
  public static double factorD2(int n) {
    return d2(n) + 3 * d3(n);
  }

  /** Lower limit of the range from the average range. */
  public static double factorD3(int n) {
    return factorD1(n) / d2(n);
  }

  /** Upper limit of the range from the average range. */
  public static double factorD4(int n) {
    return factorD2(n) / d2(n);
  }

  /** Limits of single values from the average range. */
  public static double factorE2(int n) {
    return 3 / d2(n);
  }

  /** Limits of single values from the average standard deviation. */
  public static double factorE3(int n) {
    return 3 / c4(n);
  }

  /** Standard deviation of the sample standard deviation. */
  public static double c5(int n) {
    double c4 = c4(n);
    return Math.sqrt(1 - c4 * c4);
  }

  private static Range range(int n) {
    check(n);
    Range known = RANGES[n];
    return known != null ? known : computed(n);
  }

  private static Range computed(int n) {
    RangeOfNormals integrals = Integrals.SHARED;
    Range range = new Range(integrals.mean(n), integrals.standardDeviation(n));
    RANGES[n] = range;
    return range;
  }

  private static void check(int n) {
    if (!(n >= SMALLEST_SIZE && n <= LARGEST_SIZE)) {
      throw new IllegalArgumentException(
          "chart constants are for subgroups of "
              + SMALLEST_SIZE
              + " to "
              + LARGEST_SIZE
              + " readings, not "
              + n);
    }
  }
}
