package dev.filmward.alarm;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** A time with its beginning and without its end. */
public record AlarmSpan(Instant from, Instant to) {
  public AlarmSpan {
    if (!from.isBefore(to)) {
      throw new IllegalArgumentException("a time ends after it begins, not " + from + " to " + to);
    }
  }

  public boolean contains(Instant moment) {
    return !moment.isBefore(from) && moment.isBefore(to);
  }

  /** How many of some moments lie in it; they ascend. */
  int count(List<Instant> ascending) {
    return before(ascending, to) - before(ascending, from);
  }

  private static int before(List<Instant> ascending, Instant moment) {
    int low = 0;
    int high = ascending.size();
    while (low < high) {
      int middle = (low + high) / 2;
      if (ascending.get(middle).isBefore(moment)) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  public Duration length() {
    return Duration.between(from, to);
  }

  /** Pieces of one length, the last one shorter where they do not fit. */
  List<AlarmSpan> pieces(Duration length) {
    List<AlarmSpan> pieces = new ArrayList<>();
    for (Instant start = from; start.isBefore(to); start = start.plus(length)) {
      Instant end = start.plus(length);
      pieces.add(new AlarmSpan(start, end.isBefore(to) ? end : to));
    }
    return pieces;
  }

  /** How much of another span lies in this one, as a fraction of the other. */
  double shareOf(AlarmSpan other) {
    Instant start = from.isAfter(other.from) ? from : other.from;
    Instant end = to.isBefore(other.to) ? to : other.to;
    return start.isBefore(end)
        ? seconds(Duration.between(start, end)) / seconds(other.length())
        : 0;
  }

  static double seconds(Duration duration) {
    return duration.getSeconds() + duration.getNano() / 1e9;
  }
}
