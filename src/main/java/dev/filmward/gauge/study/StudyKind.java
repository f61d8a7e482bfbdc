package dev.filmward.gauge.study;

import java.util.Locale;

/** What a gauge study is to find out. */
public enum StudyKind {
  /** How much people and couplings add to what the spots differ by. */
  CROSSED,
  /** How far the gauge is off on one piece of known thickness, and how well it repeats there. */
  BIAS,
  /** How being off goes with the thickness, on several known pieces. */
  LINEARITY,
  /** Whether one known piece reads alike over time. */
  STABILITY;

  /** As written in addresses and tables. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public static StudyKind fromWord(String word) {
    for (StudyKind kind : values()) {
      if (kind.word().equals(word)) {
        return kind;
      }
    }
    throw new IllegalArgumentException(
        "a study is \"crossed\", or of \"bias\", \"linearity\" or \"stability\", not "
            + StudyWords.quoted(word));
  }
}
