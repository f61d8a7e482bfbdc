package dev.filmward.gauge.study;

import java.util.Locale;

/** What the bias on a piece of known thickness amounts to. */
public enum BiasVerdict {
  /** The interval of the readings has 0 in it. */
  NONE_SEEN,
  /** More than chance, but the reference is not known well enough to say that the gauge is off. */
  WITHIN_REFERENCE,
  /** More than the readings and the reference leave open. */
  REAL;

  /** The rules behind it, for people. */
  public static final String SOURCE =
      "AIAG, Measurement Systems Analysis, 4th edition, chapter III B: no bias is seen where 0 lies"
          + " within its 95 % limits; the uncertainty of the reference is combined with them as in"
          + " JCGM 100:2008, 5.1";

  private static final double COVERAGE = 2;

  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * Judges a bias.
   *
   * @param standardUm standard uncertainty of the reference
   */
  public static BiasVerdict of(ReferencePiece.Bias bias, double standardUm) {
    if (!bias.isReal()) {
      return NONE_SEEN;
    }
    return Math.abs(bias.value()) > halfWidth(bias, standardUm) ? REAL : WITHIN_REFERENCE;
  }

  /** Half the width of the interval about the bias with the reference in it, um. */
  public static double halfWidth(ReferencePiece.Bias bias, double standardUm) {
    return Math.hypot((bias.upper() - bias.lower()) / 2, COVERAGE * standardUm);
  }
}
