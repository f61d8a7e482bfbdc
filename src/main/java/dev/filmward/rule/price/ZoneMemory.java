package dev.filmward.rule.price;

import dev.filmward.rule.SignalTest;
import java.util.Optional;
import java.util.Set;

/**
 * What the tests of zones remember of earlier points: for each side whether the last two were
 * beyond two sigma and the last four beyond one; how many followed each other on one side (negative
 * for below), within one sigma and outside of it. What no test asks for stays 0. Immutable.
 */
record ZoneMemory(
    int highTwos, int lowTwos, int highOnes, int lowOnes, int side, int near, int far) {

  static final ZoneMemory EMPTY = new ZoneMemory(0, 0, 0, 0, 0, 0, 0);

  /** The memory after a point, or empty if one of the tests signals at it. */
  Optional<ZoneMemory> after(double z, Set<SignalTest> tests) {
    ZoneMemory next =
        new ZoneMemory(
            tests.contains(SignalTest.TWO_OF_THREE) ? shift(highTwos, z > 2, 3) : 0,
            tests.contains(SignalTest.TWO_OF_THREE) ? shift(lowTwos, z < -2, 3) : 0,
            tests.contains(SignalTest.FOUR_OF_FIVE) ? shift(highOnes, z > 1, 5) : 0,
            tests.contains(SignalTest.FOUR_OF_FIVE) ? shift(lowOnes, z < -1, 5) : 0,
            tests.contains(SignalTest.EIGHT_IN_A_ROW) ? run(z) : 0,
            tests.contains(SignalTest.STRATIFICATION) && Math.abs(z) <= 1 ? near + 1 : 0,
            tests.contains(SignalTest.MIXTURE) && Math.abs(z) > 1 ? far + 1 : 0);
    boolean beyond = tests.contains(SignalTest.BEYOND_LIMIT) && Math.abs(z) > 3;
    return beyond || next.signals() ? Optional.empty() : Optional.of(next.forgetting());
  }

  private int run(double z) {
    return z > 0 ? Math.max(side, 0) + 1 : Math.min(side, 0) - 1;
  }

  private boolean signals() {
    return Integer.bitCount(highTwos) == 2
        || Integer.bitCount(lowTwos) == 2
        || Integer.bitCount(highOnes) == 4
        || Integer.bitCount(lowOnes) == 4
        || Math.abs(side) == 8
        || near == 15
        || far == 8;
  }

  /** Without the oldest point of each window, which the next one pushes out. */
  private ZoneMemory forgetting() {
    return new ZoneMemory(
        highTwos & 0b11, lowTwos & 0b11, highOnes & 0b1111, lowOnes & 0b1111, side, near, far);
  }

  private static int shift(int window, boolean beyond, int points) {
    return (window << 1 | (beyond ? 1 : 0)) & ((1 << points) - 1);
  }
}
