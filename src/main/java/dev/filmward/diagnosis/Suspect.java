package dev.filmward.diagnosis;

/**
 * A cause that a signature points to.
 *
 * @param code of the plant's list ({@link Causes}); a person may name it with one tap
 * @param words what it is here in particular
 */
public record Suspect(String code, String words) {
  private static final int LONGEST = 120;

  public Suspect {
    if (code.isBlank()) {
      throw new IllegalArgumentException(
          "a suspected cause needs the code of a cause, or \"" + Causes.OTHER + "\"");
    }
    if (words.isBlank() || words.length() > LONGEST) {
      throw new IllegalArgumentException(
          "the suspected cause \"" + code + "\" needs words, at most " + LONGEST + " characters");
    }
  }
}
