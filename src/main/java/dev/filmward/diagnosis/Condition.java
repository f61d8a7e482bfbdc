package dev.filmward.diagnosis;

import java.util.Arrays;
import java.util.Locale;
import java.util.function.Function;

/**
 * What a statistic is under a signature.
 *
 * @param threshold in the statistic's unit
 * @param weight how much it counts in the score, above 0 for what supports, 0 or more for a need
 */
public record Condition(
    Statistic statistic, Comparison comparison, double threshold, double weight, Role role) {

  /** Which side of the threshold counts; the threshold itself does. */
  public enum Comparison {
    AT_LEAST("at least"),
    AT_MOST("at most"),
    /** For statistics with a sign: the absolute value. */
    SIZE_AT_LEAST("size at least"),
    SIZE_AT_MOST("size at most");

    private final String words;

    Comparison(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }

    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    boolean isOfSize() {
      return this == SIZE_AT_LEAST || this == SIZE_AT_MOST;
    }

    boolean isMet(double value, double threshold) {
      return switch (this) {
        case AT_LEAST -> value >= threshold;
        case AT_MOST -> value <= threshold;
        case SIZE_AT_LEAST -> Math.abs(value) >= threshold;
        case SIZE_AT_MOST -> Math.abs(value) <= threshold;
      };
    }
  }

  /** What becomes of a signature where the condition is not met. */
  public enum Role {
    /** It is not named, also where the statistic has no value. */
    NEEDED,
    /** Its score is lower; where the statistic has no value, nothing. */
    SUPPORTS;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  public Condition {
    if (!Double.isFinite(threshold)) {
      throw new IllegalArgumentException(
          "the threshold of \"" + statistic.word() + "\" must be a number, not " + threshold);
    }
    if (!(weight >= 0) || !(weight <= 100) || (role == Role.SUPPORTS && weight == 0)) {
      throw new IllegalArgumentException(
          "the weight of \""
              + statistic.word()
              + "\" must be from 0 to 100, and above 0 where it only supports; not "
              + weight);
    }
  }

  /**
   * A condition by its words.
   *
   * @throws IllegalArgumentException that names the word which is none and those there are
   */
  public static Condition of(
      String statistic, String comparison, double threshold, double weight, String role) {
    return new Condition(
        Statistic.find(statistic)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "there is no statistic \""
                            + statistic
                            + "\"; those there are: "
                            + words(Statistic.values(), Statistic::word))),
        find(Comparison.values(), Comparison::word, comparison),
        threshold,
        weight,
        find(Role.values(), Role::word, role));
  }

  private static <T> T find(T[] all, Function<T, String> word, String wanted) {
    return Arrays.stream(all)
        .filter(one -> word.apply(one).equals(wanted))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException("\"" + wanted + "\" is none of " + words(all, word)));
  }

  private static <T> String words(T[] all, Function<T, String> word) {
    return String.join(", ", Arrays.stream(all).map(word).toList());
  }

  /** In words, for example {@code common-explained at least 0.9}. */
  public String words() {
    return statistic.word() + " " + comparison.words() + " " + Numbers.of(threshold);
  }

  boolean isMet(double value) {
    return comparison.isMet(value, threshold);
  }

  /** 1 where it is met; else how near it is, as a ratio, where that means something. */
  double degree(double value) {
    if (isMet(value)) {
      return 1;
    }
    double size = comparison.isOfSize() ? Math.abs(value) : value;
    if (!(threshold > 0) || !(size > 0)) {
      return 0;
    }
    return Math.min(size / threshold, threshold / size);
  }
}
