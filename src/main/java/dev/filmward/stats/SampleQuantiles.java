package dev.filmward.stats;

import java.io.Serializable;
import java.util.Arrays;

/**
 * Exact quantiles of finite numbers that come one at a time or as other accumulators; the order
 * does not matter. All numbers are kept, 8 bytes each, for a report and not for a stream without
 * end.
 *
 * <p>Far out, where the sample has no numbers, the answer is its smallest or greatest; {@link
 * #reaches} tells. Mutable, for one thread. Sources: see {@link QuantileRule}.
 */
public final class SampleQuantiles implements Serializable {
  private static final long serialVersionUID = 1L;

  private double[] values = new double[16];
  private int count;
  private int sorted;

  public void add(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("only finite numbers can be put in order, not " + value);
    }
    makeRoom(1);
    values[count++] = value;
  }

  /** Adds all that another accumulator has seen; the other stays as it is. */
  public void merge(SampleQuantiles other) {
    int more = other.count;
    makeRoom(more);
    System.arraycopy(other.values, 0, values, count, more);
    count += more;
  }

  public int count() {
    return count;
  }

  /** The numbers in ascending order. */
  public double[] ordered() {
    sort();
    return Arrays.copyOf(values, count);
  }

  /** Quantile of p from 0 to 1; there must be a number ({@link IllegalStateException}). */
  public double at(double p, QuantileRule rule) {
    checkShare(p);
    if (count == 0) {
      throw new IllegalStateException("no numbers, so no quantile; ask count() first");
    }
    sort();
    double place = Math.min(Math.max(rule.place(p, count), 1), count);
    int low = (int) place;
    double below = values[low - 1];
    double part = place - low;
    return part == 0 ? below : below + part * (values[low] - below);
  }

  /** Whether the quantile lies within the sample, so that nothing is cut off. */
  public boolean reaches(double p, QuantileRule rule) {
    checkShare(p);
    double place = rule.place(p, count);
    return place >= 1 && place <= count;
  }

  private static void checkShare(double p) {
    if (!(p >= 0 && p <= 1)) {
      throw new IllegalArgumentException("a quantile is for a share of 0 to 1, not " + p);
    }
  }

  private void sort() {
    if (sorted < count) {
      Arrays.sort(values, 0, count);
      sorted = count;
    }
  }

  private void makeRoom(int more) {
    int needed = Math.addExact(count, more);
    if (needed > values.length) {
      values = Arrays.copyOf(values, Math.max(needed, (int) Math.min(2L * count, 1L << 30)));
    }
  }
}
