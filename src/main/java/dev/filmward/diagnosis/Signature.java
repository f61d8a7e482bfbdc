package dev.filmward.diagnosis;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * How a cause shows itself in the thickness: data, not code. Built-in ones are a starting point; a
 * plant adds and edits its own. Immutable.
 *
 * @param code small letters, digits and hyphens; never changed
 * @param conditions in the order in which their evidence is told; the first is needed and says what
 *     the signature is about: its layers and lanes and its time are the candidate's
 * @param causes likeliest first
 * @param checks what to look at first, nearest and cheapest first
 * @param tellsApart what would settle whether it is this one
 */
public record Signature(
    String code,
    String name,
    Kind kind,
    List<Condition> conditions,
    List<Suspect> causes,
    List<String> checks,
    String tellsApart) {
  private static final int LONGEST_CODE = 40;
  private static final int LONGEST_NAME = 80;
  private static final int LONGEST_WORDS = 300;
  private static final int MOST = 12;

  /** Whether the film is otherwise or only its readings. */
  public enum Kind {
    PROCESS,
    MEASUREMENT;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    /** The kind of that word; {@link IllegalArgumentException} where there is none. */
    public static Kind fromWord(String word) {
      return Arrays.stream(values())
          .filter(kind -> kind.word().equals(word))
          .findFirst()
          .orElseThrow(
              () ->
                  new IllegalArgumentException(
                      "a signature is of process or measurement, not \"" + word + "\""));
    }
  }

  public Signature {
    conditions = List.copyOf(conditions);
    causes = List.copyOf(causes);
    checks = List.copyOf(checks);
    if (!code.matches("[a-z0-9]+(-[a-z0-9]+)*") || code.length() > LONGEST_CODE) {
      throw new IllegalArgumentException(
          "the code \""
              + code
              + "\" is not of small letters, digits and single hyphens, at most "
              + LONGEST_CODE
              + " of them; for example \"one-layer-step\"");
    }
    checkWords(code, "name", name, LONGEST_NAME);
    checkWords(code, "text that tells it apart", tellsApart, LONGEST_WORDS);
    checkCount(code, "condition", conditions);
    checkCount(code, "cause", causes);
    checkCount(code, "first check", checks);
    checks.forEach(check -> checkWords(code, "check", check, LONGEST_WORDS));
    if (conditions.get(0).role() != Condition.Role.NEEDED) {
      throw new IllegalArgumentException(
          "the first condition of \"" + code + "\" says what it is about and must be needed");
    }
    if (conditions.stream().mapToDouble(Condition::weight).sum() == 0) {
      throw new IllegalArgumentException(
          "no condition of \"" + code + "\" has a weight, so that it could have no score");
    }
  }

  private static void checkWords(String code, String what, String words, int longest) {
    if (words.isBlank() || words.length() > longest) {
      throw new IllegalArgumentException(
          "\"" + code + "\" needs a " + what + " of at most " + longest + " characters");
    }
  }

  private static void checkCount(String code, String what, List<?> things) {
    if (things.isEmpty() || things.size() > MOST) {
      throw new IllegalArgumentException(
          "\"" + code + "\" needs at least one " + what + " and at most " + MOST);
    }
  }
}
