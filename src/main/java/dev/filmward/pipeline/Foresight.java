package dev.filmward.pipeline;

import dev.filmward.alarm.Stakes;
import dev.filmward.drift.Forecast;
import dev.filmward.drift.MeanSeries;
import dev.filmward.film.SpecLimits;
import dev.filmward.pipeline.SeriesJudge.Judged;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * How long until the mean of a series is expected to meet a specification limit, from its latest
 * means. A step: takes points in time order. For one thread.
 */
final class Foresight {
  /** So many means are looked at. */
  static final int MEANS = 40;

  private final SpecLimits spec;
  private final MeanSeries means = new MeanSeries(MEANS);

  Foresight(SpecLimits spec) {
    this.spec = spec;
  }

  void add(Judged point) {
    means.add(point.row().takenAt(), point.subgroup().mean());
  }

  /** Empty where no drift is seen, or none that gets there within a shift. */
  Optional<Duration> timeToSpec(Instant now) {
    return Stream.of(spec.lower(), spec.upper())
        .filter(OptionalDouble::isPresent)
        .map(OptionalDouble::getAsDouble)
        .map(limit -> Forecast.of(means, limit, Stakes.SHIFT))
        .map(forecast -> left(forecast, now))
        .flatMap(Optional::stream)
        .min(Duration::compareTo);
  }

  private static Optional<Duration> left(Forecast forecast, Instant now) {
    return switch (forecast.verdict()) {
      case MEETS -> forecast.expected().map(when -> Duration.between(now, when));
      case ALREADY_THERE -> Optional.of(Duration.ZERO);
      case NOT_DRIFTING, NOT_WITHIN_HORIZON -> Optional.empty();
    };
  }
}
