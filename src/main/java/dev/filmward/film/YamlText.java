package dev.filmward.film;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Writes a text into YAML so that it is read as that text: plain words as they are, everything else
 * in double quotes. Stateless.
 */
final class YamlText {
  private static final Pattern PLAIN = Pattern.compile("\\p{L}[\\p{L}\\p{N} _-]*(?<! )");
  private static final Set<String> OTHER_MEANING =
      Set.of("null", "true", "false", "yes", "no", "on", "off", "y", "n");

  private YamlText() {}

  static String of(String text) {
    return isPlain(text) ? text : quoted(text);
  }

  /** The same where it stands on a line of its own, so that a comma parts nothing. */
  static String onOwnLine(String text) {
    return isPlain(text.replace(",", "")) ? text : quoted(text);
  }

  private static boolean isPlain(String text) {
    return PLAIN.matcher(text).matches() && !OTHER_MEANING.contains(text.toLowerCase(Locale.ROOT));
  }

  private static String quoted(String text) {
    StringBuilder quoted = new StringBuilder("\"");
    text.chars().forEach(unit -> quoted.append(escaped((char) unit)));
    return quoted.append('"').toString();
  }

  private static String escaped(char unit) {
    if (unit == '"' || unit == '\\') {
      return "\\" + unit;
    }
    boolean needsCode =
        Character.isISOControl(unit) || unit == '\u2028' || unit == '\u2029' || unit == '\ufeff';
    return needsCode ? String.format("\\u%04x", (int) unit) : String.valueOf(unit);
  }
}
