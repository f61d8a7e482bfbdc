package dev.filmward.drift;

import java.io.Serializable;
import java.time.Instant;
import java.time.temporal.ChronoUnit;

/**
 * The latest subgroup means of one characteristic with their times, in time order; what was pushed
 * out by newer ones is forgotten, so memory does not grow. The unit is that of the means
 * (micrometres, or a fraction for a share).
 *
 * <p>A mean earlier than the one before it is refused: whoever holds the series puts late samples
 * in order first. Times are kept to the microsecond. Mutable, for one thread.
 */
public final class MeanSeries implements Serializable {
  private static final long serialVersionUID = 1L;

  private final long[] atMicros;
  private final double[] means;
  private long added;

  /** Keeps the latest {@code capacity} means: a week of samples, for instance. */
  public MeanSeries(int capacity) {
    if (!(capacity >= 1)) {
      throw new IllegalArgumentException("a series keeps at least one mean, not " + capacity);
    }
    atMicros = new long[capacity];
    means = new double[capacity];
  }

  public void add(Instant at, double mean) {
    if (!Double.isFinite(mean)) {
      throw new IllegalArgumentException("a mean is finite, not " + mean);
    }
    long micros = Math.multiplyExact(at.getEpochSecond(), 1_000_000L) + at.getNano() / 1000;
    if (added > 0 && micros < atMicros[slot(size() - 1)]) {
      throw new IllegalArgumentException(at + " is before the latest sample; add in time order");
    }
    int slot = (int) (added % means.length);
    atMicros[slot] = micros;
    means[slot] = mean;
    added++;
  }

  /** Adds all means that a later series holds; the other stays as it is. */
  public void append(MeanSeries later) {
    for (int i = 0; i < later.size(); i++) {
      add(later.at(i), later.mean(i));
    }
  }

  /** How many means are held. */
  public int size() {
    return (int) Math.min(added, means.length);
  }

  /** Time of a mean that is held, from 0 for the oldest. */
  public Instant at(int index) {
    return Instant.EPOCH.plus(atMicros[slot(index)], ChronoUnit.MICROS);
  }

  /** A mean that is held, from 0 for the oldest. */
  public double mean(int index) {
    return means[slot(index)];
  }

  private int slot(int index) {
    return (int) ((added - size() + index) % means.length);
  }
}
