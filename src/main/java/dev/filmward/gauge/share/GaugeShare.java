package dev.filmward.gauge.share;

import java.util.OptionalDouble;

/**
 * How much of a charted variation the gauge makes by itself. Immutable.
 *
 * <p>Readings of one sample repeat the gauge independently, so the gauge's variance counts whole in
 * single readings and divided by their number in means. What the gauge does alike to all readings
 * (a wrong velocity) moves the level and is in no variance. Variances add, as for components of a
 * nested design (D. C. Montgomery, Introduction to Statistical Quality Control, gauge studies; from
 * memory).
 *
 * @param ofReadings share of the variance of single readings, 0 to 1; empty where nothing varies
 * @param ofMeans share of the variance of sample means, 0 to 1
 * @param plausibility whether the two figures go together
 */
public record GaugeShare(
    OptionalDouble ofReadings, OptionalDouble ofMeans, Plausibility plausibility) {

  /** Whether the gauge's variance fits into what is charted. */
  public enum Plausibility {
    FITS,
    /**
     * More than readings of one sample differ: one of the two figures is wrong or of other film.
     */
    GAUGE_EXCEEDS_CHART
  }

  /**
   * Of a gauge in what is charted.
   *
   * @param gaugeVariance of repeated readings of one place, um2
   */
  public static GaugeShare of(double gaugeVariance, ChartedVariation charted) {
    if (!(gaugeVariance >= 0) || !Double.isFinite(gaugeVariance)) {
      throw new IllegalArgumentException("a variance is zero or more, not " + gaugeVariance);
    }
    return new GaugeShare(
        share(gaugeVariance, charted.ofReadings()),
        share(gaugeVariance / charted.readings(), charted.ofMeans()),
        gaugeVariance > charted.within() ? Plausibility.GAUGE_EXCEEDS_CHART : Plausibility.FITS);
  }

  private static OptionalDouble share(double part, double whole) {
    return whole > 0 ? OptionalDouble.of(Math.min(1, part / whole)) : OptionalDouble.empty();
  }

  /**
   * Cp without the gauge, from the Cp that was observed with it: {@code 1 / Cp_obs^2 = 1 /
   * Cp_true^2 + (GRR / T)^2}, which says that variances add, with GRR six standard deviations of
   * the gauge and T the tolerance.
   *
   * @param gaugeOfTolerance GRR over T, 0.3 for 30 %
   * @return empty where the gauge alone would make the observed figure
   */
  public static OptionalDouble trueCp(double observedCp, double gaugeOfTolerance) {
    checkCp(observedCp, gaugeOfTolerance);
    double rest = 1 / (observedCp * observedCp) - gaugeOfTolerance * gaugeOfTolerance;
    return rest > 0 ? OptionalDouble.of(1 / Math.sqrt(rest)) : OptionalDouble.empty();
  }

  /** The same the other way round: what a process shows through a gauge. */
  public static double observedCp(double trueCp, double gaugeOfTolerance) {
    checkCp(trueCp, gaugeOfTolerance);
    return 1 / Math.sqrt(1 / (trueCp * trueCp) + gaugeOfTolerance * gaugeOfTolerance);
  }

  private static void checkCp(double cp, double gaugeOfTolerance) {
    if (!(cp > 0) || !(gaugeOfTolerance >= 0)) {
      throw new IllegalArgumentException(
          "Cp is above zero and the gauge's share not below: " + cp + ", " + gaugeOfTolerance);
    }
  }
}
