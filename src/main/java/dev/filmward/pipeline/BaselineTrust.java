package dev.filmward.pipeline;

import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.drift.Autocorrelation;
import dev.filmward.drift.LimitsTrust;
import dev.filmward.drift.ResidualChart;
import dev.filmward.film.SampleKey;
import dev.filmward.stats.Moments;
import dev.filmward.stats.Normal;
import dev.filmward.store.FigureRow;
import dev.filmward.subgroup.Subgroup;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Whether the neighbouring samples of a baseline are alike, and what that does to its limits. Those
 * are made from the readings within samples, so what counts is how much further the means spread
 * than the limits allow for. Micrometres. Immutable.
 *
 * @param neighbours how alike neighbours are
 * @param surprise the uncorrected coefficient, in standard deviations that it has by chance
 * @param spreadFactor standard deviation of the means, as a multiple of what the limits allow for
 * @param residuals of each mean from what the one before it let expect, in their standard
 *     deviations; their limits are at 3; empty for the first one
 * @param beyond samples whose residuals are beyond those limits
 */
public record BaselineTrust(
    LimitsTrust neighbours,
    double surprise,
    double spreadFactor,
    List<OptionalDouble> residuals,
    List<SampleKey> beyond) {
  /** Above this nobody freezes limits without saying what is done about it. */
  public static final double STRONG = 0.5;

  private static final int FEWEST_LEVELS = 2;
  private static final double HARDLY = 1.05;
  private static final double LIMIT = 3;

  /** Chance alone asks for a remedy on one of 740 characteristics (common practice, no source). */
  private static final double SURPRISING = 3;

  public BaselineTrust {
    residuals = List.copyOf(residuals);
    beyond = List.copyOf(beyond);
  }

  /** Empty where the means or readings do not vary, or there are too few. */
  static Optional<BaselineTrust> of(BaselineRows rows, MeanRangeLimits limits) {
    Autocorrelation neighbours = new Autocorrelation(1);
    Moments moments = new Moments();
    double readings = 0;
    for (Subgroup subgroup : rows.subgroups()) {
      neighbours.add(subgroup.mean());
      moments.add(subgroup.mean());
      readings += subgroup.size();
    }
    long levels = rows.subgroups().stream().mapToDouble(Subgroup::mean).distinct().count();
    if (levels < FEWEST_LEVELS || limits.sigmaWithin() == 0) {
      return Optional.empty();
    }
    double sigma = moments.standardDeviation().orElseThrow();
    double allowed = limits.sigmaWithin() / Math.sqrt(readings / rows.taken().size());
    ResidualChart chart = new ResidualChart(moments.mean(), neighbours.lag1(), sigma);
    return Optional.of(of(rows, neighbours, sigma / allowed, chart));
  }

  private static BaselineTrust of(
      BaselineRows rows, Autocorrelation neighbours, double spreadFactor, ResidualChart chart) {
    List<OptionalDouble> residuals = new ArrayList<>();
    List<SampleKey> beyond = new ArrayList<>();
    for (FigureRow row : rows.taken()) {
      OptionalDouble residual = chart.add(row.subgroup().orElseThrow().mean());
      residuals.add(residual);
      if (Math.abs(residual.orElse(0)) > LIMIT) {
        beyond.add(row.key());
      }
    }
    double surprise = neighbours.at(1) * Math.sqrt((double) neighbours.count());
    return new BaselineTrust(LimitsTrust.of(neighbours), surprise, spreadFactor, residuals, beyond);
  }

  /** Whether freezing asks for a remedy. */
  public boolean isStrong() {
    return neighbours.lag1() > STRONG && surprise > SURPRISING;
  }

  /** Means beyond the limits without any cause, of 1000; 2.7 if the limits allow for all. */
  public double falseAlarmsPer1000() {
    return 1000 * 2 * Normal.STANDARD.above(LIMIT / Math.max(1, spreadFactor));
  }

  /** What speaks against the limits, where anything does. */
  Optional<String> warning() {
    return switch (neighbours.verdict()) {
      case BELIEVABLE -> Optional.empty();
      case TOO_NARROW -> Optional.of(alike());
      case TOO_WIDE ->
          Optional.of(
              String.format(
                  Locale.ROOT,
                  "Neighbouring samples differ more than samples far apart (lag-1 autocorrelation"
                      + " %.2f): look for corrections after every sample.",
                  neighbours.lag1()));
    };
  }

  private String alike() {
    String spread =
        spreadFactor < HARDLY
            ? "The means spread no further than these limits allow for, but tests of runs signal"
                + " far more often than they promise."
            : String.format(
                Locale.ROOT,
                "The means spread %.1f times as far as these limits allow for: expect about %.0f"
                    + " of 1000 beyond them without any cause instead of 2.7, and more runs still.",
                spreadFactor,
                falseAlarmsPer1000());
    return String.format(
        Locale.ROOT,
        "Neighbouring samples are alike (lag-1 autocorrelation %.2f, give or take %.2f). %s"
            + " Of their residuals %d of %d are beyond three sigma.",
        neighbours.lag1(),
        2 * neighbours.standardError(),
        spread,
        beyond.size(),
        residuals.size() - 1);
  }
}
