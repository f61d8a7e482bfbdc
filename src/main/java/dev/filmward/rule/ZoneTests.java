package dev.filmward.rule;

import java.io.Serializable;

/**
 * The four zone tests on the means of one series. Takes the distance of each mean from the centre
 * line in standard deviations, in time order, and answers with a set of signals.
 *
 * <p>A test is signalled at a point that itself lies strictly beyond the zone line and, with it, at
 * least k of the last m points (fewer at the start) on the same side. A point on the centre line
 * ends a run. The run test is signalled at the eighth point and at each further one. A signal
 * resets nothing. What is answered depends on the last eight points only. Mutable, constant memory,
 * for one thread.
 *
 * <p>Source: Western Electric Co., Statistical Quality Control Handbook (1956), pp. 23-28, tests 1
 * to 4.
 */
public final class ZoneTests implements Serializable {
  private static final long serialVersionUID = 1L;

  private final SideTests high = new SideTests(Side.HIGH);
  private final SideTests low = new SideTests(Side.LOW);

  /** Signals of the next point as a set for {@link Signal#decode}; 0 where there are none. */
  public int next(double z) {
    if (Double.isNaN(z)) {
      throw new IllegalArgumentException("a point must have a place on the chart, not NaN");
    }
    return high.next(z) | low.next(-z);
  }
}
