package dev.filmward.web;

import java.util.List;

/** A piece of a module of the pages: brackets hold pieces, and so do the holes of a text. */
sealed interface JsPiece {
  /** Stands in a text where something is put in. */
  String HOLE = "{}";

  /** Where it begins, counted from 1. */
  int line();

  /** A name, a keyword or a number. */
  record Word(String text, int line) implements JsPiece {}

  /** An operator or a comma. */
  record Sign(String text, int line) implements JsPiece {}

  /** A regular expression; what is in it does not matter here. */
  record Expression(int line) implements JsPiece {}

  /**
   * A string or template literal.
   *
   * @param texts what it says itself, one more than it has holes
   * @param holes what is put in
   */
  record Text(List<String> texts, List<List<JsPiece>> holes, int line) implements JsPiece {
    String words() {
      return String.join(HOLE, texts);
    }
  }

  /**
   * What brackets hold.
   *
   * @param open the opening one
   */
  record Group(char open, List<JsPiece> pieces, int line) implements JsPiece {}

  /** Whether a piece is this word or sign. */
  static boolean is(JsPiece piece, String text) {
    return (piece instanceof Word word && word.text().equals(text))
        || (piece instanceof Sign sign && sign.text().equals(text));
  }
}
