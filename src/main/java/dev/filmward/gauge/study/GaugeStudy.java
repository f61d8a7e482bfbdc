package dev.filmward.gauge.study;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the study of one layer says of the gauge: analysis of variance, components, shares and the
 * verdict after the usual rules. All percentages are of standard deviations, so they do not add up.
 * Immutable.
 *
 * @param raw components as estimated, negative ones too
 * @param share the gauge's share of the whole spread with its confidence limits
 */
public record GaugeStudy(
    CrossedReadings readings,
    StudyAnova anova,
    Components raw,
    ShareLimits share,
    Optional<Tolerance> tolerance) {
  private static final double CATEGORY_FACTOR = 1.41;

  /** Readings that never repeat differently have no such study. */
  static GaugeStudy of(CrossedReadings readings, Optional<Tolerance> tolerance) {
    StudyAnova anova = StudyAnova.of(readings);
    return new GaugeStudy(
        readings,
        anova,
        Components.of(anova, readings),
        ShareLimits.of(anova, readings),
        tolerance);
  }

  /** With 0 for negative estimates. */
  public Components variance() {
    return raw.shown();
  }

  /** Whether operators could be told apart. */
  public boolean hasReproducibility() {
    return anova.operator().isPresent();
  }

  /** Of the gauge, or of a component in um², in the standard deviation of all readings. */
  public double percentStudyVariation(double variance) {
    return 100 * Math.sqrt(variance / variance().total());
  }

  public double percentStudyVariation() {
    return percentStudyVariation(variance().gauge());
  }

  /** Six standard deviations of the gauge in the tolerance; empty where there is none. */
  public OptionalDouble percentTolerance() {
    return tolerance
        .map(known -> OptionalDouble.of(known.percent(variance().gauge())))
        .orElse(OptionalDouble.empty());
  }

  /**
   * How many groups of parts the gauge can tell apart, at least 1: 1.41 times the ratio of the
   * standard deviations of parts and gauge, cut to a whole number.
   *
   * <p>Source: AIAG (2010), chapter III B (from memory); at least 1: common practice, no source.
   */
  public long distinctCategories() {
    Components shown = variance();
    return Math.max(1, (long) (CATEGORY_FACTOR * Math.sqrt(shown.part() / shown.gauge())));
  }

  /** For charts: is a change of the process seen? */
  public GaugeVerdict verdictForProcess() {
    return GaugeVerdict.of(percentStudyVariation());
  }

  /** For conformity: is a reading inside the specification believed? */
  public Optional<GaugeVerdict> verdictForTolerance() {
    return percentTolerance().isPresent()
        ? Optional.of(GaugeVerdict.of(percentTolerance().getAsDouble()))
        : Optional.empty();
  }

  /** The worse of both. */
  public GaugeVerdict verdict() {
    return verdictForTolerance().map(verdictForProcess()::orWorse).orElse(verdictForProcess());
  }
}
