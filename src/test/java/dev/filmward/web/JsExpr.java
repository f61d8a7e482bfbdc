package dev.filmward.web;

import dev.filmward.web.JsPiece.Group;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * An expression of a module where it stands.
 *
 * @param around the pieces beside it and its own
 * @param from its first
 * @param to after its last
 * @param within what holds them, null at the top
 */
record JsExpr(List<JsPiece> around, int from, int to, @Nullable JsSpot within) {
  static JsExpr all(List<JsPiece> pieces, @Nullable JsSpot within) {
    return new JsExpr(pieces, 0, pieces.size(), within);
  }

  /** What the brackets of a spot hold, parted at its commas. */
  static List<JsExpr> partsOf(JsSpot brackets) {
    List<JsPiece> pieces = ((Group) brackets.piece()).pieces();
    List<JsExpr> parts = new ArrayList<>();
    int from = 0;
    for (int i = 0; i <= pieces.size(); i++) {
      if (i == pieces.size() || JsPiece.is(pieces.get(i), ",")) {
        if (i > from) {
          parts.add(new JsExpr(pieces, from, i, brackets));
        }
        from = i + 1;
      }
    }
    return parts;
  }

  int size() {
    return to - from;
  }

  JsPiece piece(int i) {
    return around.get(from + i);
  }

  JsSpot spot(int i) {
    return new JsSpot(around, from + i, within);
  }

  boolean is(int i, String text) {
    return i < size() && JsPiece.is(piece(i), text);
  }

  boolean isGroup(int i, char open) {
    return i < size() && piece(i) instanceof Group group && group.open() == open;
  }

  JsExpr part(int first, int end) {
    return new JsExpr(around, from + first, from + end, within);
  }

  /** Where an operator stands, from a place on. */
  Optional<Integer> find(String sign, int start) {
    for (int i = start; i < size(); i++) {
      if (is(i, sign)) {
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }

  /** The colon of the choice whose question mark stands there. */
  int colonOf(int question) {
    int open = 0;
    for (int i = question + 1; i < size(); i++) {
      if (is(i, "?")) {
        open++;
      } else if (is(i, ":") && open-- == 0) {
        return i;
      }
    }
    throw new IllegalArgumentException("line " + piece(question).line() + ": ? without :");
  }
}
