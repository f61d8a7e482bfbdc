package dev.filmward.rule;

import static dev.filmward.chart.ChartKind.XBAR;

import java.io.Serializable;

/**
 * The tests of patterns on the means of one series: trend, stratification, mixture and alternation.
 * Takes the distance of each mean from the centre line in standard deviations, in time order, and
 * answers with a set of signals.
 *
 * <p>A point on the line at one sigma is within it. Two equal points end a trend and an
 * alternation. A trend upwards is high, one downwards low; the other tests are signalled on the
 * side of the point, high for one on the centre line. A test is signalled at the point that
 * completes its pattern and at each further one. Mutable, constant memory, for one thread.
 *
 * <p>Source: as {@link SignalTest}.
 */
final class PatternTests implements Serializable {
  private static final long serialVersionUID = 1L;

  private static final int RISING = new Signal(XBAR, SignalTest.TREND, Side.HIGH).bit();
  private static final int FALLING = new Signal(XBAR, SignalTest.TREND, Side.LOW).bit();
  private static final int HIGH = onSide(Side.HIGH);
  private static final int LOW = onSide(Side.LOW);
  private static final int ANY_STRATIFICATION = ofBothSides(SignalTest.STRATIFICATION);
  private static final int ANY_MIXTURE = ofBothSides(SignalTest.MIXTURE);
  private static final int ANY_ALTERNATION = ofBothSides(SignalTest.ALTERNATION);

  private double last = Double.NaN;
  private int rises;
  private int falls;
  private int turns;
  private int near;
  private int far;

  private static int onSide(Side side) {
    return new Signal(XBAR, SignalTest.STRATIFICATION, side).bit()
        | new Signal(XBAR, SignalTest.MIXTURE, side).bit()
        | new Signal(XBAR, SignalTest.ALTERNATION, side).bit();
  }

  private static int ofBothSides(SignalTest test) {
    return new Signal(XBAR, test, Side.HIGH).bit() | new Signal(XBAR, test, Side.LOW).bit();
  }

  int next(double z) {
    boolean within = Math.abs(z) <= 1;
    near = within ? Math.min(near + 1, 15) : 0;
    far = within ? 0 : Math.min(far + 1, 8);
    step(z);
    int unsided =
        (near == 15 ? ANY_STRATIFICATION : 0)
            | (far == 8 ? ANY_MIXTURE : 0)
            | (turns == 13 ? ANY_ALTERNATION : 0);
    return (rises == 5 ? RISING : 0)
        | (falls == 5 ? FALLING : 0)
        | (unsided & (z < 0 ? LOW : HIGH));
  }

  /** Counts rises, falls and steps that went the other way than the step before. */
  private void step(double z) {
    if (z > last) {
      turns = falls > 0 ? Math.min(turns + 1, 13) : 1;
      rises = Math.min(rises + 1, 5);
      falls = 0;
    } else if (z < last) {
      turns = rises > 0 ? Math.min(turns + 1, 13) : 1;
      falls = Math.min(falls + 1, 5);
      rises = 0;
    } else {
      turns = 0;
      rises = 0;
      falls = 0;
    }
    last = z;
  }
}
