package dev.filmward.diagnosis;

import java.util.List;

/** One way in which layers can move together. Immutable; nobody writes to the array. */
final class Direction {
  private final Family family;
  private final double[] moves;
  private final List<Integer> positions;

  /**
   * @param moves how much each layer moves, as a fraction of itself
   * @param positions reported layers that move, from 1; empty where all do
   */
  Direction(Family family, double[] moves, List<Integer> positions) {
    this.family = family;
    this.moves = moves;
    this.positions = List.copyOf(positions);
  }

  /** What makes layers move so. */
  enum Family {
    COMMON,
    ONE_LAYER,
    EXTRUDER,
    RESIN,
    TRADE_MASS,
    TRADE_TIME_OF_FLIGHT,
    SKINS
  }

  Family family() {
    return family;
  }

  double[] moves() {
    return moves;
  }

  List<Integer> positions() {
    return positions;
  }
}
