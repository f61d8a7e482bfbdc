package dev.filmward.report;

import dev.filmward.alarm.LineMode;
import dev.filmward.alarm.LineModeChange;
import dev.filmward.alarm.LineModes;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * How many samples of a film should have come in a span: one each usual time (the median between
 * two) while the line made the film and was not said to stand still. A line makes a film from the
 * film's first sample to the next sample of another film; a film that was on the line when the span
 * began or ended counts to that end, so that a gauge that stops on a Wednesday is missed from then
 * on.
 */
final class ExpectedSamples {
  private static final int FEWEST_FOR_PACE = 10;

  private final LineModes modes;
  private final TreeSet<Instant> others;
  private final boolean onTheLineBefore;

  /**
   * @param others when samples of other films were taken on the line
   * @param onTheLineBefore whether the line's last sample before the span was of this film
   */
  ExpectedSamples(LineModes modes, List<Instant> others, boolean onTheLineBefore) {
    this.modes = modes;
    this.others = new TreeSet<>(others);
    this.onTheLineBefore = onTheLineBefore;
  }

  /** The usual time between samples; empty where too few came to tell. */
  static Optional<Duration> usual(List<Instant> times) {
    if (times.size() < FEWEST_FOR_PACE) {
      return Optional.empty();
    }
    List<Duration> gaps = new ArrayList<>();
    for (int i = 1; i < times.size(); i++) {
      gaps.add(Duration.between(times.get(i - 1), times.get(i)));
    }
    Duration usual = gaps.stream().sorted().toList().get(gaps.size() / 2);
    return usual.isZero() ? Optional.empty() : Optional.of(usual);
  }

  /**
   * Counts them.
   *
   * @param times when the film's samples of the span were taken, in time order
   * @param to end of the span, or now where it is not over
   */
  long count(List<Instant> times, Instant from, Instant to, Duration usual) {
    if (times.isEmpty()) {
      return onTheLineBefore ? whole(from, to, usual) : 0;
    }
    Instant first = times.get(0);
    Instant last = times.get(times.size() - 1);
    long expected = 1 + (onTheLineBefore ? whole(from, first, usual) : 0) + whole(last, to, usual);
    for (int i = 1; i < times.size(); i++) {
      double steps = made(times.get(i - 1), times.get(i), usual);
      expected += Math.max(1, Math.round(steps));
    }
    return expected;
  }

  /** At an end of the span a step that is not over is not missed yet. */
  private long whole(Instant from, Instant to, Duration usual) {
    return from.isBefore(to) ? (long) made(from, to, usual) : 0;
  }

  /** How many usual times the film was made in a gap without a sample of it. */
  private double made(Instant from, Instant to, Duration usual) {
    if (from.isBefore(to) && !others.subSet(from, to).isEmpty()) {
      return 0;
    }
    Duration running = Duration.between(from, to).minus(still(from, to));
    return (double) running.toMillis() / usual.toMillis();
  }

  /**
   * How long of a gap the line was said not to run. A start or changeover that was said before the
   * gap is over: samples came since, and it ends with them.
   */
  private Duration still(Instant from, Instant to) {
    Duration still = Duration.ZERO;
    Instant at = from;
    boolean isStill = modes.at(from).filter(said -> said.mode() == LineMode.DOWN).isPresent();
    for (LineModeChange change : modes.changes()) {
      if (change.since().isAfter(from) && change.since().isBefore(to)) {
        still = isStill ? still.plus(Duration.between(at, change.since())) : still;
        at = change.since();
        isStill = change.mode().suppresses();
      }
    }
    return isStill ? still.plus(Duration.between(at, to)) : still;
  }
}
