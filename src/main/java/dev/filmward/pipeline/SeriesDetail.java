package dev.filmward.pipeline;

import dev.filmward.capability.CapabilityQuestion;
import dev.filmward.capability.CapabilityStatement;
import dev.filmward.capability.CapabilityTally;
import dev.filmward.capability.Giveaway;
import dev.filmward.capability.Stability;
import dev.filmward.drift.Autocorrelation;
import dev.filmward.drift.Change;
import dev.filmward.drift.Forecast;
import dev.filmward.drift.LimitsTrust;
import dev.filmward.drift.MeanSeries;
import dev.filmward.film.SpecLimits;
import dev.filmward.pipeline.Analysis.PointSignal;
import dev.filmward.variation.WebComponents;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What takes a closer look: how sure the capability is, since when the mean moves and where it is
 * going, and whether neighbouring samples are so alike that the limits lie. Drift is looked for in
 * the last {@value #LATEST} samples.
 *
 * @param trust empty where there are too few samples
 * @param change empty where nothing stands out of the noise
 * @param web along and across, of samples in which every lane was measured
 * @param giveaway empty without a lower specification limit, for fewer than 30 samples, and while
 *     the process is not stable
 * @param densityGcm3 of the layer or film, where the structure tells it
 * @param towardsLower and {@code towardsUpper}: when the mean meets a specification limit
 */
public record SeriesDetail(
    Optional<CapabilityStatement> capability,
    Optional<LimitsTrust> trust,
    Optional<Change> change,
    Optional<Forecast> towardsLower,
    Optional<Forecast> towardsUpper,
    Optional<WebComponents> web,
    Optional<Giveaway> giveaway,
    OptionalDouble densityGcm3) {
  static final int LATEST = 2000;
  private static final int FEWEST = 30;

  /** Ranges of five beyond three sigma without a cause (E. S. Pearson; ASTM MNL 7). */
  private static final double OF_RANGES = 0.0046;

  private static final Duration HORIZON = Duration.ofDays(7);

  /** When the subgroups were taken. */
  interface Times {
    Instant takenAt(int index);
  }

  static SeriesDetail of(
      CapabilityTally tally,
      CapabilityQuestion question,
      SubgroupColumn subgroups,
      Times times,
      List<PointSignal> signals,
      Optional<WebComponents> web) {
    MeanSeries means = new MeanSeries(LATEST);
    Autocorrelation neighbours = new Autocorrelation(1);
    for (int i = Math.max(0, subgroups.count() - LATEST); i < subgroups.count(); i++) {
      means.add(times.takenAt(i), subgroups.mean(i));
      neighbours.add(subgroups.mean(i));
    }
    Optional<LimitsTrust> trust =
        varies(subgroups) && means.size() >= FEWEST
            ? Optional.of(LimitsTrust.of(neighbours))
            : Optional.empty();
    long signalled = signals.stream().mapToInt(PointSignal::index).distinct().count();
    Stability stability =
        new Stability(
            subgroups.count(), signalled, Stability.FALSE_SHARE_OF_ZONE_TESTS + OF_RANGES);
    CapabilityQuestion asked = trust.map(found -> question.withLag1(found.lag1())).orElse(question);
    SpecLimits spec = question.individual();
    Optional<CapabilityStatement> statement = CapabilityStatement.of(tally, asked, stability);
    return new SeriesDetail(
        statement,
        trust,
        Change.in(means),
        forecast(means, spec.lower()),
        forecast(means, spec.upper()),
        web,
        statement
            .filter(found -> stability.isStable() && subgroups.count() >= FEWEST)
            .flatMap(Giveaway::of),
        OptionalDouble.empty());
  }

  SeriesDetail withDensity(OptionalDouble gcm3) {
    return new SeriesDetail(
        capability, trust, change, towardsLower, towardsUpper, web, giveaway, gcm3);
  }

  /** What a film has too much is told by its layers, where they have limits of their own. */
  SeriesDetail withoutGiveaway() {
    return new SeriesDetail(
        capability, trust, change, towardsLower, towardsUpper, web, Optional.empty(), densityGcm3);
  }

  private static boolean varies(SubgroupColumn subgroups) {
    for (int i = 1; i < subgroups.count(); i++) {
      if (subgroups.mean(i) != subgroups.mean(0)) {
        return true;
      }
    }
    return false;
  }

  private static Optional<Forecast> forecast(MeanSeries means, OptionalDouble limit) {
    return limit.isPresent() && means.size() >= FEWEST
        ? Optional.of(Forecast.of(means, limit.getAsDouble(), HORIZON))
        : Optional.empty();
  }
}
