package dev.filmward.rule;

import java.util.Arrays;

/**
 * The statistical tests of a point. All but the first look at earlier points too, and are of the
 * mean chart only.
 *
 * <p>Source: Western Electric Co., Statistical Quality Control Handbook (1956), for the first four;
 * ISO 7870-2 and L. S. Nelson, The Shewhart control chart - tests for special causes, Journal of
 * Quality Technology 16 (1984) 237, for the others.
 */
public enum SignalTest {
  /** The point is more than three sigma from the centre line. */
  BEYOND_LIMIT("beyond-limit", 0),
  /** With it, two of three points are more than two sigma off, on one side. */
  TWO_OF_THREE("two-of-three", 2),
  /** With it, four of five points are more than one sigma off, on one side. */
  FOUR_OF_FIVE("four-of-five", 4),
  /** With it, eight points or more follow each other on one side. */
  EIGHT_IN_A_ROW("eight-in-a-row", 7),
  /** With it, six points or more follow each other upwards, or downwards. */
  TREND("trend", 5),
  /** With it, fifteen points or more follow each other within one sigma of the centre line. */
  STRATIFICATION("stratification", 14),
  /** With it, eight points or more follow each other without one within one sigma. */
  MIXTURE("mixture", 7),
  /** With it, fourteen points or more go up and down in turn. */
  ALTERNATION("alternation", 13);

  private final String word;
  private final int earlierPoints;

  SignalTest(String word, int earlierPoints) {
    this.word = word;
    this.earlierPoints = earlierPoints;
  }

  /** How many points before it settle the answer at a point. */
  public int earlierPoints() {
    return earlierPoints;
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
