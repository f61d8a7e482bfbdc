package dev.filmward.diagnosis;

import dev.filmward.film.SampleKey;
import java.util.List;

/**
 * A sample that screening took for misread. Its readings are left out of everything that is said
 * about the process; how many there are is evidence against the gauge.
 *
 * @param kind a word in small letters and hyphens; those below have a statistic of their own, any
 *     other counts with all flags together
 * @param positions reported layers concerned, from 1; empty where it is the whole sample
 */
public record GaugeFlag(SampleKey sample, String kind, List<Integer> positions) {
  /** One layer reads like two and the rest moved up a place. */
  public static final String MISSED_BOUNDARY = "boundary-not-found";

  /** Two neighbours trade thickness within one sample, or one lane of it. */
  public static final String MISPLACED_BOUNDARY = "neighbours-trade";

  /** Pinned at the end of the range that the gauge was set to. */
  public static final String RANGE_END = "range-end";

  public static final String LOST_ECHO = "lost-echo";

  /** Couplant or air counted as film. */
  public static final String COUPLANT = "couplant";

  public GaugeFlag {
    positions = List.copyOf(positions);
    if (!kind.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
      throw new IllegalArgumentException(
          "the kind of a flag is of small letters, digits and hyphens, not \"" + kind + "\"");
    }
  }
}
