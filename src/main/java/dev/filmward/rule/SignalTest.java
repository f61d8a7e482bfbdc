package dev.filmward.rule;

import java.util.Arrays;

/**
 * The statistical tests of a point. The last three look at earlier points too, and are of the mean
 * chart only.
 */
public enum SignalTest {
  /** The point is more than three sigma from the centre line. */
  BEYOND_LIMIT("beyond-limit"),
  /** With it, two of three points are more than two sigma off, on one side. */
  TWO_OF_THREE("two-of-three"),
  /** With it, four of five points are more than one sigma off, on one side. */
  FOUR_OF_FIVE("four-of-five"),
  /** With it, eight points or more follow each other on one side. */
  EIGHT_IN_A_ROW("eight-in-a-row");

  private final String word;

  SignalTest(String word) {
    this.word = word;
  }

  /** As written in files and addresses. */
  public String word() {
    return word;
  }

  /** The test of that name; {@link IllegalArgumentException} where there is none. */
  public static SignalTest fromWord(String word) {
    return Arrays.stream(values())
        .filter(test -> test.word.equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException("no test \"" + word + "\"; the tests are " + words()));
  }

  private static String words() {
    return String.join(", ", Arrays.stream(values()).map(SignalTest::word).toList());
  }
}
