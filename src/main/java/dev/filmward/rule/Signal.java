package dev.filmward.rule;

import dev.filmward.chart.ChartKind;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A test that is fulfilled at a point, in the order of chart, test, side. Immutable.
 *
 * <p>Steps that must not allocate answer with a set of signals in one int, a bit for each; {@link
 * #decode} turns it into signals.
 */
public record Signal(ChartKind chart, SignalTest test, Side side)
    implements Comparable<Signal>, Serializable {
  private static final long serialVersionUID = 1L;

  private static final Comparator<Signal> ORDER =
      Comparator.comparing(Signal::chart).thenComparing(Signal::test).thenComparing(Signal::side);

  private static final List<Signal> BY_BIT = all();

  public Signal {
    if (!isOf(chart, test)) {
      throw new IllegalArgumentException(
          "the test " + test.word() + " is of the mean chart only, not of " + chart.word());
    }
  }

  /** Whether a chart has a test. */
  static boolean isOf(ChartKind chart, SignalTest test) {
    return chart == ChartKind.XBAR || test == SignalTest.BEYOND_LIMIT;
  }

  /** A set of at most one signal, that a value is beyond a limit on one side of 0. */
  public static int beyond(ChartKind chart, double value, double limit) {
    if (Double.isNaN(value)) {
      throw new IllegalArgumentException("a point must have a place on the chart, not NaN");
    }
    if (!(Math.abs(value) > limit)) {
      return 0;
    }
    return new Signal(chart, SignalTest.BEYOND_LIMIT, value > 0 ? Side.HIGH : Side.LOW).bit();
  }

  /** The signals of a set, in order; 0 gives a shared empty list. */
  public static List<Signal> decode(int set) {
    if (set == 0) {
      return List.of();
    }
    if (set >>> BY_BIT.size() != 0) {
      throw new IllegalArgumentException("not a set of signals: " + Integer.toBinaryString(set));
    }
    List<Signal> signals = new ArrayList<>(Integer.bitCount(set));
    for (int rest = set; rest != 0; rest &= rest - 1) {
      signals.add(BY_BIT.get(Integer.numberOfTrailingZeros(rest)));
    }
    return List.copyOf(signals);
  }

  /** This signal as a set of one. */
  public int bit() {
    for (int i = 0; i < BY_BIT.size(); i++) {
      Signal other = BY_BIT.get(i);
      if (other.chart == chart && other.test == test && other.side == side) {
        return 1 << i;
      }
    }
    throw new IllegalStateException("no bit for " + this);
  }

  private static List<Signal> all() {
    List<Signal> all = new ArrayList<>();
    for (ChartKind chart : ChartKind.values()) {
      for (SignalTest test : SignalTest.values()) {
        if (isOf(chart, test)) {
          all.add(new Signal(chart, test, Side.HIGH));
          all.add(new Signal(chart, test, Side.LOW));
        }
      }
    }
    return List.copyOf(all);
  }

  @Override
  public int compareTo(Signal other) {
    return ORDER.compare(this, other);
  }
}
