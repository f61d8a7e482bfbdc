package dev.filmward.web;

import dev.filmward.web.JsPiece.Group;
import dev.filmward.web.JsPiece.Text;
import dev.filmward.web.JsPiece.Word;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a module does with a literal, as far as its own expression tells.
 *
 * @param name the function, the attribute or what it is assigned to
 * @param argument which argument of the function it is, from 0
 */
record JsUse(Kind kind, String name, int argument) {
  private static final Set<String> COMPARE = Set.of("===", "!==", "==", "case", "in");

  /** What these give is shown where their argument would be. */
  private static final Set<String> GIVE_BACK = Set.of("map", "flatMap", "concat", "push");

  /** What these give is shown where what they are asked of would be. */
  private static final Set<String> STAY = Set.of("filter", "concat", "trim", "slice", "repeat");

  private static final Set<String> GROUPING =
      Set.of("return", "if", "while", "for", "switch", "of", "in", "await", "typeof", "case");

  enum Kind {
    IMPORTED,
    COMPARED,
    KEY,
    ATTRIBUTE,
    ARGUMENT,
    ASSIGNED,
    OTHER
  }

  static JsUse of(JsSpot literal) {
    if (literal.isBeside(-1, "from") || literal.isBeside(-1, "import")) {
      return new JsUse(Kind.IMPORTED, "", 0);
    }
    boolean isCompared =
        COMPARE.stream().anyMatch(sign -> literal.isBeside(-1, sign) || literal.isBeside(1, sign));
    return isCompared ? new JsUse(Kind.COMPARED, "", 0) : ofExpression(literal);
  }

  /** Goes outwards until something is done with the expression. */
  private static JsUse ofExpression(JsSpot from) {
    for (@Nullable JsSpot spot = from; spot != null; spot = spot.within()) {
      JsUse use = within(spot);
      if (use != null) {
        return use;
      }
    }
    return new JsUse(Kind.OTHER, "", 0);
  }

  /** What is done with it among the pieces beside it; null where it goes on outside. */
  private static @Nullable JsUse within(JsSpot spot) {
    int start = spot.start();
    if (isAskedItself(spot)) {
      return new JsUse(Kind.OTHER, "", 0);
    }
    for (int i = spot.index() - 1; i >= start; i--) {
      JsPiece before = spot.around().get(i);
      if (JsPiece.is(before, "return")) {
        return new JsUse(Kind.OTHER, "return", 0);
      }
      if (JsPiece.is(before, "=>")) {
        break;
      }
      if (JsPiece.is(before, "=") || JsPiece.is(before, "+=")) {
        return new JsUse(Kind.ASSIGNED, i > start ? name(spot.around().get(i - 1)) : "", 0);
      }
    }
    return spot.within() != null && spot.within().piece() instanceof Group group
        ? inBrackets(group, spot.within(), spot, start)
        : null;
  }

  /** A list or text of which only a question is asked, as {@code ['a', 'b'].includes(name)}. */
  private static boolean isAskedItself(JsSpot spot) {
    return spot.isBeside(1, ".")
        && spot.beside(2).filter(piece -> STAY.contains(name(piece))).isEmpty();
  }

  private static @Nullable JsUse inBrackets(Group group, JsSpot outer, JsSpot spot, int start) {
    List<JsPiece> around = spot.around();
    if (group.open() == '{') {
      if (start + 1 >= around.size() || !JsPiece.is(around.get(start + 1), ":")) {
        return null;
      }
      Kind kind = spot.index() == start ? Kind.KEY : Kind.ATTRIBUTE;
      boolean isData = outer.isBeside(-1, ":") && outer.isBeside(-2, "data");
      return new JsUse(kind, (isData ? "data-" : "") + name(around.get(start)), 0);
    }
    boolean isAfterAValue = outer.beside(-1).filter(JsUse::isValue).isPresent();
    if (group.open() == '[') {
      return isAfterAValue ? new JsUse(Kind.KEY, "", 0) : null;
    }
    if (!isAfterAValue || outer.beside(-1).filter(p -> GIVE_BACK.contains(name(p))).isPresent()) {
      return null;
    }
    int argument =
        (int) around.subList(0, start).stream().filter(piece -> JsPiece.is(piece, ",")).count();
    return new JsUse(Kind.ARGUMENT, name(outer.beside(-1).orElseThrow()), argument);
  }

  private static boolean isValue(JsPiece piece) {
    return piece instanceof Group
        || piece instanceof Text
        || (piece instanceof Word word && !GROUPING.contains(word.text()));
  }

  private static String name(JsPiece piece) {
    return piece instanceof Word word
        ? word.text()
        : piece instanceof Text text ? text.words() : "";
  }
}
