package dev.filmward.web;

import dev.filmward.web.JsPiece.Group;
import dev.filmward.web.JsPiece.Text;
import dev.filmward.web.JsPiece.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Which texts an expression of a module may be, as far as its sources say: literals, choices
 * between them, texts with a hole, names of constants, what a callback is given of a list, what a
 * function is called with. {@link #ANY} stands for what they do not say.
 */
final class JsValues {
  static final String ANY = "\u2022";
  private static final int DEEPEST = 12;

  private final JsNames names;

  JsValues(JsNames names) {
    this.names = names;
  }

  Set<String> of(JsExpr expression) {
    return of(expression, 0);
  }

  private Set<String> of(JsExpr expression, int depth) {
    if (depth > DEEPEST || expression.size() == 0) {
      return Set.of(ANY);
    }
    Optional<Integer> question = expression.find("?", 0);
    if (question.isPresent()) {
      int colon = expression.colonOf(question.get());
      return union(
          of(expression.part(question.get() + 1, colon), depth + 1),
          of(expression.part(colon + 1, expression.size()), depth + 1));
    }
    for (String either : List.of("??", "||")) {
      Optional<Integer> there = expression.find(either, 0);
      if (there.isPresent()) {
        return union(
            of(expression.part(0, there.get()), depth + 1),
            of(expression.part(there.get() + 1, expression.size()), depth + 1));
      }
    }
    return expression.size() == 1
        ? ofPiece(expression.spot(0), depth)
        : ofLookUp(expression, depth);
  }

  private Set<String> ofPiece(JsSpot spot, int depth) {
    if (spot.piece() instanceof Text text) {
      return filled(text, spot, depth);
    }
    if (spot.piece() instanceof Group group && group.open() == '(') {
      return of(JsExpr.all(group.pieces(), spot), depth + 1);
    }
    if (spot.piece() instanceof Word word) {
      Set<String> values = new TreeSet<>();
      names.valuesOf(word.text(), spot).forEach(value -> values.addAll(of(value, depth + 1)));
      return values.isEmpty() ? Set.of(ANY) : values;
    }
    return Set.of(ANY);
  }

  /** {@code WORDS[kind]}: any of them. */
  private Set<String> ofLookUp(JsExpr expression, int depth) {
    if (expression.size() != 2 || !expression.isGroup(1, '[')) {
      return Set.of(ANY);
    }
    Set<String> values = new TreeSet<>();
    for (JsExpr list : names.listOf(expression.part(0, 1))) {
      JsExpr value = JsNames.valueOfProperty(list);
      values.addAll(of(value, depth + 1));
    }
    return values.isEmpty() ? Set.of(ANY) : values;
  }

  private Set<String> filled(Text text, JsSpot spot, int depth) {
    List<String> values = List.of(text.texts().get(0));
    for (int i = 0; i < text.holes().size(); i++) {
      String after = text.texts().get(i + 1);
      List<String> longer = new ArrayList<>();
      for (String in : of(JsExpr.all(text.holes().get(i), spot), depth + 1)) {
        values.forEach(before -> longer.add(before + in + after));
      }
      values = longer;
    }
    return new TreeSet<>(values);
  }

  private static Set<String> union(Set<String> a, Set<String> b) {
    Set<String> both = new TreeSet<>(a);
    both.addAll(b);
    return both;
  }
}
