package dev.filmward.rule;

import java.io.Serializable;
import java.util.Map;

/**
 * For each test, how many samples in a row must signal before it opens an alarm (its on-delay), and
 * for how many it must not be fulfilled before the alarm has returned to normal. Immutable.
 *
 * @param delays a test that is not named has {@link Delay#STANDARD}
 */
public record AlarmDelays(Map<ChartTest, Delay> delays) implements Serializable {
  private static final long serialVersionUID = 1L;

  /** What holds until somebody chooses. */
  public static final AlarmDelays STANDARD = new AlarmDelays(Map.of());

  public AlarmDelays {
    delays = Map.copyOf(delays);
  }

  /**
   * The delays of one test, in samples.
   *
   * @param opensAfter so many samples in a row signal, the last by this test
   * @param returnsAfter so many samples in a row do not fulfil it
   */
  public record Delay(int opensAfter, int returnsAfter) implements Serializable {
    private static final long serialVersionUID = 1L;

    /** As far as is looked back. */
    public static final int MOST = 8;

    /** A second look; normal again at the next sample. Common practice, no source. */
    public static final Delay STANDARD = new Delay(2, 1);

    public Delay {
      check("opens after", opensAfter);
      check("returns after", returnsAfter);
    }

    private static void check(String what, int samples) {
      if (!(samples >= 1 && samples <= MOST)) {
        throw new IllegalArgumentException(
            "an alarm " + what + " 1 to " + MOST + " samples, not " + samples);
      }
    }
  }

  public Delay of(Signal signal) {
    return of(ChartTest.of(signal));
  }

  public Delay of(ChartTest test) {
    return delays.getOrDefault(test, Delay.STANDARD);
  }

  /** How many samples before a sample matter at it. */
  public int earlierSamples() {
    return delays.values().stream()
        .mapToInt(delay -> Math.max(delay.opensAfter(), delay.returnsAfter()) - 1)
        .reduce(Delay.STANDARD.opensAfter() - 1, Math::max);
  }
}
