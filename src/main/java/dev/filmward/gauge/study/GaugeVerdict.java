package dev.filmward.gauge.study;

import java.util.Locale;

/**
 * What a share of the gauge in the whole spread amounts to.
 *
 * <p>Source: AIAG, Measurement Systems Analysis, 4th ed. (2010), chapter II D (from memory; cited
 * by Beckert and Paim, International Journal of Metrology and Quality Engineering 8 (2017) 23,
 * table 1): under 10 % acceptable, 10 to 30 % may be, over 30 % not.
 */
public enum GaugeVerdict {
  ACCEPTABLE("acceptable"),
  CONDITIONAL("acceptable for some uses, if the customer agrees"),
  NOT_ACCEPTABLE("not acceptable");

  /** The rules behind it, for people. */
  public static final String SOURCE =
      "AIAG, Measurement Systems Analysis, 4th edition: under 10 % acceptable, 10 to 30 % for some"
          + " uses, over 30 % not; at least 5 distinct categories";

  /** So many categories a gauge should tell apart. */
  public static final int CATEGORIES_WANTED = 5;

  private static final double ACCEPTABLE_BELOW = 10;
  private static final double CONDITIONAL_UP_TO = 30;

  private final String words;

  GaugeVerdict(String words) {
    this.words = words;
  }

  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public String words() {
    return words;
  }

  /**
   * Judges a gauge.
   *
   * @param percent that six standard deviations of the gauge take of a tolerance, or one of all
   */
  public static GaugeVerdict of(double percent) {
    if (percent < ACCEPTABLE_BELOW) {
      return ACCEPTABLE;
    }
    return percent <= CONDITIONAL_UP_TO ? CONDITIONAL : NOT_ACCEPTABLE;
  }

  GaugeVerdict orWorse(GaugeVerdict other) {
    return compareTo(other) >= 0 ? this : other;
  }
}
