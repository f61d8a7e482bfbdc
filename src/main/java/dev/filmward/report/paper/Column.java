package dev.filmward.report.paper;

/**
 * A column of a table. Immutable.
 *
 * @param weight of its width beside the others
 */
record Column(String title, Kind kind, double weight) {
  /** Words stand left, figures right so that decimals align. */
  enum Kind {
    WORDS,
    FIGURES
  }

  static Column words(String title, double weight) {
    return new Column(title, Kind.WORDS, weight);
  }

  static Column figures(String title, double weight) {
    return new Column(title, Kind.FIGURES, weight);
  }
}
