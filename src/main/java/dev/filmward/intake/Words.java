package dev.filmward.intake;

import java.util.Collection;
import java.util.List;

/** The turns of phrase that messages about files share. */
public final class Words {
  private static final int LONGEST_VALUE = 200;
  private static final int MOST_NAMES = 12;

  private Words() {}

  /** A value between quotation marks; cut if long. */
  public static String quoted(String value) {
    return "\"" + cut(value) + "\"";
  }

  /** A value of at most 200 characters, ending in an ellipsis where it was longer. */
  public static String cut(String value) {
    if (value.length() <= LONGEST_VALUE) {
      return value;
    }
    int end = LONGEST_VALUE - (Character.isHighSurrogate(value.charAt(LONGEST_VALUE - 1)) ? 1 : 0);
    return value.substring(0, end) + "\u2026";
  }

  /** Some names of a longer list, quoted. */
  public static String some(Collection<String> names) {
    List<String> first = names.stream().limit(MOST_NAMES).map(Words::quoted).toList();
    int more = names.size() - first.size();
    return String.join(", ", first) + (more > 0 ? " and " + more + " more" : "");
  }

  /** {@code "1 row"}, {@code "2 rows"}. */
  public static String count(long number, String singular) {
    return number + " " + singular + (number == 1 ? "" : "s");
  }
}
