package dev.filmward.diagnosis;

import java.util.Locale;

/**
 * What may make a layer unlike itself, as the plant calls it.
 *
 * @param code small letters, digits and hyphens; the same in every language, and never changed
 * @param words as people read it
 */
public record Cause(String code, String words, Standing standing) {
  private static final int LONGEST_CODE = 40;
  private static final int LONGEST_WORDS = 80;

  /** Whether a cause is there to choose from. */
  public enum Standing {
    ACTIVE,
    /** Kept for the alarms that named it. */
    RETIRED;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    /** The standing of that word; {@link IllegalArgumentException} where there is none. */
    public static Standing fromWord(String word) {
      for (Standing standing : values()) {
        if (standing.word().equals(word)) {
          return standing;
        }
      }
      throw new IllegalArgumentException("a cause is active or retired, not \"" + word + "\"");
    }
  }

  public Cause {
    if (!code.matches("[a-z0-9]+(-[a-z0-9]+)*") || code.length() > LONGEST_CODE) {
      throw new IllegalArgumentException(
          "the code \""
              + code
              + "\" is not of small letters, digits and single hyphens, at most "
              + LONGEST_CODE
              + " of them; for example \"screen-blinded\"");
    }
    if (words.isBlank() || words.length() > LONGEST_WORDS) {
      throw new IllegalArgumentException(
          "the cause \"" + code + "\" needs words, at most " + LONGEST_WORDS + " characters");
    }
  }

  static Cause active(String code, String words) {
    return new Cause(code, words, Standing.ACTIVE);
  }

  public boolean isActive() {
    return standing == Standing.ACTIVE;
  }
}
