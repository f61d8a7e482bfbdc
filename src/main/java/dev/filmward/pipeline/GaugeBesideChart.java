package dev.filmward.pipeline;

import dev.filmward.film.SpecLimits;
import dev.filmward.gauge.conformity.GlobalRisk;
import dev.filmward.gauge.conformity.GuardedLimits;
import dev.filmward.gauge.share.ChartedVariation;
import dev.filmward.gauge.share.GaugeShare;
import dev.filmward.subgroup.Subgroup;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a gauge makes of the variation that a layer's samples show, as far as its repeatability
 * goes, and what that does to figures of the layer. Immutable.
 *
 * @param share of the charted variances
 * @param observedCp from the spread within samples; empty without two limits
 * @param trueCp without the gauge; empty where the gauge alone would make the observed one
 * @param risk of a wrong statement about single readings by the rule, the process taken as normal;
 *     empty without limits, or where the gauge varies as much as the chart
 */
public record GaugeBesideChart(
    GaugeShare share, OptionalDouble observedCp, OptionalDouble trueCp, Optional<GlobalRisk> risk) {
  private static final double SIX_SIGMA = 6;
  private static final OptionalDouble NOTHING = OptionalDouble.empty();

  /**
   * The gauge as it stands beside a chart.
   *
   * @param repeatabilityUm standard deviation of repeated readings of one place
   * @param combinedUm standard uncertainty with all that is in it
   */
  record Gauged(double repeatabilityUm, double combinedUm, Optional<GuardedLimits> limits) {
    double variance() {
      return repeatabilityUm * repeatabilityUm;
    }
  }

  /** Empty where the samples are too few to tell. */
  static Optional<GaugeBesideChart> of(List<Subgroup> samples, Gauged gauge) {
    double mean = samples.stream().mapToDouble(Subgroup::mean).average().orElse(0);
    return ChartedVariation.of(samples).map(charted -> of(charted, mean, gauge));
  }

  private static GaugeBesideChart of(ChartedVariation charted, double mean, Gauged gauge) {
    OptionalDouble tolerance = gauge.limits().map(GaugeBesideChart::tolerance).orElse(NOTHING);
    OptionalDouble observed = cp(tolerance, Math.sqrt(charted.within()));
    return new GaugeBesideChart(
        GaugeShare.of(gauge.variance(), charted),
        observed,
        observed.isPresent()
            ? GaugeShare.trueCp(
                observed.getAsDouble(),
                SIX_SIGMA * gauge.repeatabilityUm() / tolerance.getAsDouble())
            : NOTHING,
        risk(charted, mean, gauge));
  }

  private static OptionalDouble tolerance(GuardedLimits limits) {
    SpecLimits spec = limits.spec();
    return spec.lower().isPresent() && spec.upper().isPresent()
        ? OptionalDouble.of(spec.upper().getAsDouble() - spec.lower().getAsDouble())
        : NOTHING;
  }

  private static OptionalDouble cp(OptionalDouble tolerance, double sigma) {
    return tolerance.isPresent() && sigma > 0
        ? OptionalDouble.of(tolerance.getAsDouble() / (SIX_SIGMA * sigma))
        : NOTHING;
  }

  /** True values vary by what is charted less what the gauge adds. */
  private static Optional<GlobalRisk> risk(ChartedVariation charted, double mean, Gauged gauge) {
    double variance = charted.ofReadings() - gauge.variance();
    return variance > 0 && gauge.combinedUm() > 0
        ? gauge
            .limits()
            .map(
                limits ->
                    GlobalRisk.of(
                        new GlobalRisk.MeasuredProcess(
                            mean, Math.sqrt(variance), gauge.combinedUm()),
                        limits))
        : Optional.empty();
  }
}
