package dev.filmward.web;

import dev.filmward.web.JsPiece.Group;
import dev.filmward.web.JsPiece.Text;
import dev.filmward.web.JsPiece.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a parameter takes of what it is given: all of it, or parts by their place or their name. */
final class JsParameter {
  private JsParameter() {}

  /** What a name takes of each member; empty where it is not among what the parameter names. */
  static Optional<List<JsExpr>> picked(String name, JsSpot parameter, List<JsExpr> members) {
    if (JsPiece.is(parameter.piece(), name)) {
      return Optional.of(members);
    }
    if (!binds(name, parameter)) {
      return Optional.empty();
    }
    List<JsExpr> names = JsExpr.partsOf(parameter);
    List<JsExpr> found = new ArrayList<>();
    for (JsExpr member : members) {
      for (int i = 0; i < names.size(); i++) {
        if (names.get(i).is(names.get(i).size() - 1, name)) {
          Optional<JsExpr> one = partOf(member, i, names.get(i));
          if (one.isEmpty()) {
            return Optional.of(List.of());
          }
          found.add(one.get());
        }
      }
    }
    return Optional.of(found);
  }

  private static Optional<JsExpr> partOf(JsExpr member, int place, JsExpr named) {
    if (member.is(1, ":")) {
      return Optional.of(place == 0 ? keyOf(member) : valueOfProperty(member));
    }
    if (member.size() != 1 || !(member.piece(0) instanceof Group group)) {
      return Optional.empty();
    }
    List<JsExpr> parts = JsExpr.partsOf(member.spot(0));
    return group.open() == '['
        ? parts.stream().skip(place).findFirst()
        : parts.stream()
            .filter(part -> sameName(part, named))
            .findFirst()
            .map(JsParameter::valueOfProperty);
  }

  private static boolean sameName(JsExpr part, JsExpr named) {
    return named.piece(0) instanceof Word word && part.is(0, word.text());
  }

  static JsExpr keyOf(JsExpr property) {
    return property.piece(0) instanceof Word word
        ? JsExpr.all(List.of(new Text(List.of(word.text()), List.of(), word.line())), null)
        : property.part(0, 1);
  }

  /** The value of {@code name: value}, or the expression itself. */
  static JsExpr valueOfProperty(JsExpr property) {
    return property.is(1, ":") ? property.part(2, property.size()) : property;
  }

  /** Whether a name is among those that a parameter, a list of them or an import gives. */
  static boolean binds(String name, JsSpot parameter) {
    if (!(parameter.piece() instanceof Group group)) {
      return JsPiece.is(parameter.piece(), name);
    }
    for (int i = 0; i < group.pieces().size(); i++) {
      if (binds(name, new JsSpot(group.pieces(), i, parameter))) {
        return true;
      }
    }
    return false;
  }
}
