package dev.filmward.alarm;

import java.time.Instant;
import java.util.Arrays;
import java.util.Locale;

/**
 * A first check that a person has done.
 *
 * @param words the check, as the plan had it then
 * @param note what was seen; may be empty
 */
public record DoneCheck(String words, Outcome outcome, String note, String by, Instant at) {
  /** Whether the check showed what is wrong. */
  public enum Outcome {
    FOUND("found"),
    NOT_FOUND("not found");

    private final String words;

    Outcome(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }

    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The outcome of that word; {@link IllegalArgumentException} where there is none. */
    public static Outcome fromWord(String word) {
      return Arrays.stream(values())
          .filter(outcome -> outcome.word().equals(word))
          .findFirst()
          .orElseThrow(
              () ->
                  new IllegalArgumentException(
                      "a check is \"found\" or \"not-found\", not \"" + word + "\""));
    }
  }

  public DoneCheck {
    if (by.isBlank()) {
      throw new IllegalArgumentException("who did the check? Give a name");
    }
    if (words.isBlank()) {
      throw new IllegalArgumentException("which check was done?");
    }
  }
}
