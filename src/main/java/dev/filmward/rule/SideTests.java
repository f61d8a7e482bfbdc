package dev.filmward.rule;

import static dev.filmward.chart.ChartKind.XBAR;

import java.io.Serializable;

/**
 * The zone tests on one side of the centre line. Takes the distance of each point towards that
 * side, in sigma, and answers with a set of signals.
 *
 * <p>For each zone line the last few points are kept as bits, the newest lowest: 1 where the point
 * was strictly beyond the line. Mutable, for one thread.
 */
final class SideTests implements Serializable {
  private static final long serialVersionUID = 1L;

  private final int beyondLimit;
  private final int twoOfThree;
  private final int fourOfFive;
  private final int eightInARow;

  private int beyondTwo;
  private int beyondOne;
  private int beyondCentre;

  SideTests(Side side) {
    beyondLimit = new Signal(XBAR, SignalTest.BEYOND_LIMIT, side).bit();
    twoOfThree = new Signal(XBAR, SignalTest.TWO_OF_THREE, side).bit();
    fourOfFive = new Signal(XBAR, SignalTest.FOUR_OF_FIVE, side).bit();
    eightInARow = new Signal(XBAR, SignalTest.EIGHT_IN_A_ROW, side).bit();
  }

  int next(double distance) {
    beyondTwo = (beyondTwo << 1 | (distance > 2 ? 1 : 0)) & 0b111;
    beyondOne = (beyondOne << 1 | (distance > 1 ? 1 : 0)) & 0b11111;
    beyondCentre = (beyondCentre << 1 | (distance > 0 ? 1 : 0)) & 0b11111111;
    return (distance > 3 ? beyondLimit : 0)
        | (distance > 2 && Integer.bitCount(beyondTwo) >= 2 ? twoOfThree : 0)
        | (distance > 1 && Integer.bitCount(beyondOne) >= 4 ? fourOfFive : 0)
        | (beyondCentre == 0b11111111 ? eightInARow : 0);
  }
}
