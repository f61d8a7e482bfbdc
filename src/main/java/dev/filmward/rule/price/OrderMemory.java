package dev.filmward.rule.price;

import dev.filmward.rule.SignalTest;
import java.util.Optional;
import java.util.Set;

/**
 * What the tests of order remember of earlier points: how many steps followed each other upwards
 * (negative: downwards) and how many went up and down in turn. What no test asks for stays 0.
 * Immutable.
 */
record OrderMemory(int steps, int turns) {
  static final OrderMemory EMPTY = new OrderMemory(0, 0);

  static boolean isNeeded(Set<SignalTest> tests) {
    return tests.contains(SignalTest.TREND) || tests.contains(SignalTest.ALTERNATION);
  }

  /**
   * The memory after a step, or empty if one of the tests signals.
   *
   * @param direction 1 for a step upwards, -1 for one downwards
   */
  Optional<OrderMemory> after(int direction, Set<SignalTest> tests) {
    boolean sameWay = direction * steps > 0;
    int nextSteps = sameWay ? steps + direction : direction;
    int nextTurns = steps == 0 || sameWay ? 1 : turns + 1;
    boolean trend = tests.contains(SignalTest.TREND);
    boolean alternation = tests.contains(SignalTest.ALTERNATION);
    if ((trend && Math.abs(nextSteps) == 5) || (alternation && nextTurns == 13)) {
      return Optional.empty();
    }
    return Optional.of(new OrderMemory(trend ? nextSteps : direction, alternation ? nextTurns : 0));
  }
}
