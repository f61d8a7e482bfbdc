package dev.filmward.people;

import java.text.Normalizer;
import java.util.Locale;
import java.util.Set;

/**
 * The name of a person or a machine, as it stands in all that is kept.
 *
 * @param text as it is shown
 */
public record PersonName(String text) {
  private static final int LONGEST = 80;

  /** What stands in the records where no person acted. */
  private static final Set<String> TAKEN = Set.of("filmward", "not named", "nobody", "demo data");

  public PersonName {
    text = Normalizer.normalize(text, Normalizer.Form.NFC).strip();
    if (text.isEmpty() || text.length() > LONGEST) {
      throw new IllegalArgumentException("a name has 1 to " + LONGEST + " characters");
    }
    if (text.codePoints().anyMatch(PersonName::isHidden)) {
      throw new IllegalArgumentException("a name is of characters that can be seen");
    }
    if (TAKEN.contains(keyOf(text))) {
      throw new IllegalArgumentException(
          "\"" + text + "\" is what Filmward calls itself; take the person's own name");
    }
  }

  /** By this, names are the same. */
  public String key() {
    return keyOf(text);
  }

  /** The key of whatever was typed, also where it could be no name. */
  public static String keyOf(String typed) {
    return Normalizer.normalize(typed, Normalizer.Form.NFKC).strip().toLowerCase(Locale.ROOT);
  }

  /** Control characters, and those that change the direction of what follows. */
  private static boolean isHidden(int character) {
    return switch (Character.getType(character)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.UNASSIGNED,
          Character.PRIVATE_USE ->
          true;
      default -> false;
    };
  }
}
