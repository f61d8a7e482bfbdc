package dev.filmward.drift;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * When the mean meets a control or specification limit if it goes on moving as it does, with a 95 %
 * interval. It is the mean that is forecast; single samples scatter around it and reach the limit
 * earlier. Immutable.
 *
 * <p>Source: see {@link RampFit}.
 *
 * @param expected empty unless the mean moves towards the limit and meets it within the horizon
 * @param notBefore empty where even the steepest likely ramp does not meet it within the horizon
 * @param notAfter empty where it may come after the horizon or never
 */
public record Forecast(
    Verdict verdict,
    Optional<Instant> expected,
    Optional<Instant> notBefore,
    Optional<Instant> notAfter) {

  /** What is said about the limit. */
  public enum Verdict {
    /** The level does not move, or it jumped and stays: there is nothing to carry on. */
    NOT_DRIFTING,
    /** It moves away from the limit, or too slowly to be there in time. */
    NOT_WITHIN_HORIZON,
    /** The mean is expected to meet the limit. */
    MEETS,
    /** By the fitted line, the mean is there or past it. */
    ALREADY_THERE
  }

  /** Where the mean of a series will be within {@code horizon} after its latest sample. */
  public static Forecast of(MeanSeries series, double limit, Duration horizon) {
    Optional<Change> change = Change.in(series);
    if (change.isEmpty() || change.get().kind() != Change.Kind.RAMP) {
      return without(Verdict.NOT_DRIFTING);
    }
    Window window = new Window(series);
    RampFit ramp = new RampFit(new Profile(window, Shape.RAMP));
    double aim = limit - window.average();
    double start = ramp.best().level();
    double rate = ramp.best().rate();
    double now = start + rate * (1 - ramp.bend());
    boolean isAhead = rate > 0 ? aim > start : aim < start;
    if (!isAhead) {
      return without(Verdict.NOT_WITHIN_HORIZON);
    }
    if (rate > 0 ? now >= aim : now <= aim) {
      return without(Verdict.ALREADY_THERE);
    }
    Instant end = series.at(series.size() - 1).plus(horizon);
    return within(window, ramp.crossing(limit), end);
  }

  private static Forecast within(Window window, RampFit.Crossing crossing, Instant end) {
    double last = window.time(end);
    Verdict verdict = crossing.expected() <= last ? Verdict.MEETS : Verdict.NOT_WITHIN_HORIZON;
    return new Forecast(
        verdict,
        instant(window, crossing.expected(), last),
        instant(window, Math.max(1, crossing.earliest()), last),
        instant(window, crossing.latest(), last));
  }

  private static Optional<Instant> instant(Window window, double time, double last) {
    return time <= last ? Optional.of(window.at(time)) : Optional.empty();
  }

  private static Forecast without(Verdict verdict) {
    return new Forecast(verdict, Optional.empty(), Optional.empty(), Optional.empty());
  }
}
