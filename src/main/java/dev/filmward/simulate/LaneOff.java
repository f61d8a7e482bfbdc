package dev.filmward.simulate;

/**
 * One lane becomes thicker or thinner. Where an extruder still delivers as much as before, what one
 * lane loses the others gain, and the mean across the web does not move.
 *
 * @param lane number from 1
 * @param fraction of the thickness by which that lane deviates; negative is thinner
 * @param others fraction by which each other lane deviates
 */
record LaneOff(Span span, Reach reach, int lane, double fraction, double others) implements Event {

  /** The other lanes gain together what one lane loses. */
  LaneOff keepingTheMean(int lanes) {
    return new LaneOff(span, reach, lane, fraction, -fraction / (lanes - 1));
  }

  @Override
  public double factor(int sample, int position, int atLane) {
    if (!span.contains(sample)) {
      return 1;
    }
    return 1 + reach.weight(position) * (atLane == lane ? fraction : others);
  }
}
