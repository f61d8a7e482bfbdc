package dev.filmward.pipeline;

import dev.filmward.alarm.Stakes;
import dev.filmward.drift.Change;
import dev.filmward.drift.Forecast;
import dev.filmward.drift.MeanSeries;
import dev.filmward.film.SpecLimits;
import dev.filmward.pipeline.SeriesJudge.Judged;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How long until the mean of a series is expected to meet a specification limit, from its latest
 * means. A step: takes points in time order. For one thread.
 */
final class Foresight {
  /** So many means are looked at. */
  static final int MEANS = 60;

  private static final double FAR_HOURS = 4.0 * Stakes.SHIFT.toHours();
  private static final double MS_PER_HOUR = 3_600_000;

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
    OptionalDouble limit = near();
    return limit.isEmpty()
        ? Optional.empty()
        : left(Forecast.of(means, limit.getAsDouble(), Stakes.SHIFT), now);
  }

  private static Optional<Duration> left(Forecast forecast, Instant now) {
    return switch (forecast.verdict()) {
      case MEETS -> forecast.expected().map(when -> Duration.between(now, when));
      case ALREADY_THERE -> Optional.of(Duration.ZERO);
      case NOT_DRIFTING, NOT_WITHIN_HORIZON -> Optional.empty();
    };
  }

  /**
   * The limit that a straight line through the means would meet within a few shifts: a look that
   * costs little, before the forecast, which is asked for nothing most of the time.
   */
  private OptionalDouble near() {
    int n = means.size();
    if (n < Change.FEWEST_SAMPLES || spec.isEmpty()) {
      return OptionalDouble.empty();
    }
    double meanX = 0;
    double meanY = 0;
    for (int i = 0; i < n; i++) {
      meanX += hours(i) / n;
      meanY += means.mean(i) / n;
    }
    double sxx = 0;
    double sxy = 0;
    for (int i = 0; i < n; i++) {
      double dx = hours(i) - meanX;
      sxx += dx * dx;
      sxy += dx * (means.mean(i) - meanY);
    }
    double slope = sxy / sxx;
    double now = meanY + slope * (hours(n - 1) - meanX);
    OptionalDouble ahead = slope > 0 ? spec.upper() : spec.lower();
    boolean isNear = ahead.isPresent() && (ahead.getAsDouble() - now) / slope <= FAR_HOURS;
    return isNear ? ahead : OptionalDouble.empty();
  }

  private double hours(int index) {
    return Duration.between(means.at(0), means.at(index)).toMillis() / MS_PER_HOUR;
  }
}
