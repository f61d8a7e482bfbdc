package dev.filmward.web;

import dev.filmward.web.JsPiece.Text;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What modules, pages and style sheets say by themselves. Of a literal that a module puts on the
 * page every word counts; of one whose way it does not tell, two words, a word beside something put
 * in, or a capitalised word. Class names, addresses, keys, what is compared and what goes to the
 * console are no words. A single small word that reaches the page through a name of the module is
 * not seen.
 */
final class ReadableWords {
  private static final String LETTERS = "\\p{L}{2,}";
  private static final Pattern WORD = Pattern.compile(LETTERS);
  private static final Pattern SENTENCE =
      Pattern.compile(
          "(?U)%1$s[,.:;!?]?\\s(?:%1$s|\\{\\}|$)|(?:^|\\{\\}|[,.:;])\\s%1$s|^\\p{Lu}\\p{Ll}+(?!\\p{L})"
              .formatted(LETTERS));
  private static final Pattern ADDRESS = Pattern.compile("(?:https?:/)?/\\S*");

  private static final Set<String> SHOWN_ATTRIBUTES =
      Set.of(
          "aria-label",
          "aria-description",
          "aria-roledescription",
          "aria-valuetext",
          "title",
          "placeholder",
          "alt",
          "label",
          "words",
          "text",
          "data-word",
          "data-label",
          "data-place");
  private static final Set<String> DATA_ATTRIBUTES =
      Set.of(
          "class",
          "d",
          "transform",
          "points",
          "viewBox",
          "style",
          "font",
          "aria-labelledby",
          "aria-describedby",
          "aria-keyshortcuts");
  private static final Set<String> SHOWN_ASSIGNMENTS =
      Set.of("textContent", "innerText", "innerHTML", "title", "placeholder", "label", "ariaLabel");
  private static final Set<String> DATA_ASSIGNMENTS = Set.of("className", "font", "transform");

  /** They put their arguments on the page as they are. */
  private static final Set<String> SHOWING =
      Set.of("append", "prepend", "replaceChildren", "createTextNode", "fillText", "say", "alert");

  private static final Set<String> ASKING =
      Set.of(
          "querySelector",
          "querySelectorAll",
          "closest",
          "matches",
          "matchMedia",
          "includes",
          "startsWith",
          "endsWith",
          "replaceAll",
          "split",
          "add",
          "toggle",
          "error",
          "room");

  private static final Pattern PAGE =
      Pattern.compile(
          "(?s)<!--.*?-->|<(?:script|style)\\b.*?</(?:script|style)>|<([^>]*)>|([^<]+)");
  private static final Pattern PAGE_ATTRIBUTE =
      Pattern.compile("\\b(?:title|alt|aria-label|placeholder|label)=\"([^\"]*)\"");
  private static final Pattern STYLE = Pattern.compile("content:[^;}]*?\"([^\"]*)\"");

  private ReadableWords() {}

  static List<String> ofModule(String source) {
    return JsSpot.of(source).stream()
        .filter(spot -> spot.piece() instanceof Text text && isReadable(text, JsUse.of(spot)))
        .map(spot -> ((Text) spot.piece()).words().replaceAll("[\\h\\v]+", " ").strip())
        .toList();
  }

  static List<String> ofPage(String html) {
    List<String> found = new ArrayList<>();
    Matcher piece = PAGE.matcher(html);
    while (piece.find()) {
      if (piece.group(1) != null) {
        PAGE_ATTRIBUTE
            .matcher(piece.group(1))
            .results()
            .forEach(attribute -> found.add(attribute.group(1)));
      } else if (piece.group(2) != null) {
        found.add(piece.group(2).strip());
      }
    }
    found.removeIf(words -> !WORD.matcher(words).find());
    return found;
  }

  static List<String> ofStyle(String css) {
    return STYLE
        .matcher(css)
        .results()
        .map(content -> content.group(1).replaceAll("\\\\[0-9a-fA-F]{1,6}", ""))
        .filter(words -> WORD.matcher(words).find())
        .toList();
  }

  private static boolean isReadable(Text text, JsUse use) {
    String words = text.words();
    if (ADDRESS.matcher(words).matches()) {
      return false;
    }
    return switch (use.kind()) {
      case IMPORTED, COMPARED, KEY -> false;
      case ATTRIBUTE ->
          SHOWN_ATTRIBUTES.contains(use.name())
              ? hasAWord(words)
              : !isData(use.name()) && isASentence(words);
      case ASSIGNED ->
          SHOWN_ASSIGNMENTS.contains(use.name())
              ? hasAWord(words)
              : !DATA_ASSIGNMENTS.contains(use.name()) && isASentence(words);
      case ARGUMENT ->
          isShown(use) ? hasAWord(words) : !ASKING.contains(use.name()) && isASentence(words);
      case OTHER -> isASentence(words);
    };
  }

  private static boolean isData(String attribute) {
    return attribute.startsWith("data-") || DATA_ATTRIBUTES.contains(attribute);
  }

  /** Elements take their name, their attributes, and then what is in them. */
  private static boolean isShown(JsUse use) {
    return switch (use.name()) {
      case "el", "svg" -> use.argument() >= 2;
      case "setText" -> use.argument() == 1;
      default -> SHOWING.contains(use.name());
    };
  }

  private static boolean hasAWord(String words) {
    return WORD.matcher(words.replace(JsPiece.HOLE, "")).find();
  }

  private static boolean isASentence(String words) {
    return SENTENCE.matcher(words).find();
  }
}
