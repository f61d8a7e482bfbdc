package dev.filmward.intake.recognition;

import dev.filmward.intake.FileNameForm;
import dev.filmward.intake.TimePattern;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the name of a file says, as in {@code R17_S003_20261125-0930.csv}: a roll, a sample, a time.
 * A word or letter before a number must say what it is; nothing else is taken. Immutable.
 */
final class NameParts {
  private static final Pattern TIME =
      Pattern.compile(
          "20[0-9]{2}-?[0-9]{2}-?[0-9]{2}(?:[T_ -]?[0-9]{2}[-.h]?[0-9]{2}(?:[-.]?[0-9]{2})?)?");
  private static final Map<String, Pattern> WORDS =
      Map.of(
          "roll", word("R|Roll|Rolle"),
          "sample", word("S|P|Sample|Probe"),
          "line",
              Pattern.compile("(?:Line|Linie|Anlage)[ -]?[0-9A-Z]{1,6}", Pattern.CASE_INSENSITIVE));

  private final Map<String, String> texts = new LinkedHashMap<>();
  private final String form;

  NameParts(String fileName) {
    String rest = FileNameForm.stem(fileName);
    Matcher time = TIME.matcher(rest);
    if (time.find()) {
      texts.put("taken_at", time.group());
      rest = rest.substring(0, time.start()) + "{taken_at}" + rest.substring(time.end());
    }
    for (Map.Entry<String, Pattern> word : WORDS.entrySet()) {
      rest = take(word.getKey(), word.getValue(), rest);
    }
    this.form = rest;
  }

  private String take(String part, Pattern pattern, String name) {
    Matcher matcher =
        Pattern.compile(
                "(?<![\\p{L}{])(?:" + pattern.pattern() + ")(?![\\p{L}0-9])", pattern.flags())
            .matcher(name);
    if (!matcher.find()) {
      return name;
    }
    texts.put(part, matcher.group());
    return name.substring(0, matcher.start()) + "{" + part + "}" + name.substring(matcher.end());
  }

  /** What the name says of a field. */
  Optional<String> text(String part) {
    return Optional.ofNullable(texts.get(part));
  }

  /** The name with its parts in braces. */
  String form() {
    return form;
  }

  /**
   * The pattern of the time in the name, if there is one; never doubtful, since the year is first.
   */
  Optional<String> timePattern() {
    return text("taken_at").flatMap(NameParts::pattern);
  }

  private static Optional<String> pattern(String text) {
    String digits = text.replaceAll("[0-9]", "0");
    String letters = "yyyyMMddHHmmss";
    StringBuilder pattern = new StringBuilder();
    int used = 0;
    for (int i = 0; i < digits.length(); i++) {
      char sign = digits.charAt(i);
      if (sign == '0') {
        pattern.append(used < letters.length() ? letters.charAt(used) : 's');
        used++;
      } else {
        pattern.append(Character.isLetter(sign) ? "'" + sign + "'" : String.valueOf(sign));
      }
    }
    boolean reads = TimePattern.of(pattern.toString()).read(text).isPresent();
    return reads ? Optional.of(pattern.toString()) : Optional.empty();
  }

  private static Pattern word(String words) {
    return Pattern.compile("(?:" + words + ")[ -]?[0-9]{1,9}", Pattern.CASE_INSENSITIVE);
  }
}
