package dev.filmward.drift;

import dev.filmward.stats.Normal;
import java.util.Locale;

/**
 * Whether limits that were taken from moving ranges of successive means can be believed, when
 * neighbouring means are alike. Moving ranges see only the part {@code sqrt(1 - phi)} of the
 * spread; limits of three such standard deviations are too narrow and alarm without cause.
 * Immutable.
 *
 * <p>Source: L. C. Alwan, Effects of autocorrelation on control chart performance, Communications
 * in Statistics: Theory and Methods 21 (1992) 1025; ISO 7870-9.
 *
 * @param lag1 autocorrelation of successive means
 * @param standardError of it
 */
public record LimitsTrust(Verdict verdict, double lag1, double standardError) {
  private static final double FACTOR_THAT_MATTERS = 2;

  /** What is said about the limits. */
  public enum Verdict {
    /** Neighbours are no more alike than chance makes them, or too little to matter. */
    BELIEVABLE,
    /** The limits are too narrow: more than twice the false alarms that they promise. */
    TOO_NARROW,
    /** Neighbours differ more than they should: the limits are too wide, drift is seen late. */
    TOO_WIDE
  }

  public static LimitsTrust of(Autocorrelation means) {
    double phi = means.lag1();
    boolean isSure = Math.abs(means.at(1)) > means.band();
    boolean matters = alarmFactor(Math.abs(phi)) > FACTOR_THAT_MATTERS;
    Verdict verdict = Verdict.BELIEVABLE;
    if (isSure && matters) {
      verdict = phi > 0 ? Verdict.TOO_NARROW : Verdict.TOO_WIDE;
    }
    return new LimitsTrust(verdict, phi, means.lag1StandardError());
  }

  /** Width of the limits as a part of what it should be. */
  public double widthFactor() {
    return Math.sqrt(1 - lag1);
  }

  /** Points outside the limits without any cause, of 1000; 2.7 for independent means. */
  public double falseAlarmsPer1000() {
    return 1000 * outside(lag1);
  }

  /** How many times more false alarms there are than three standard deviations promise. */
  public double alarmFactor() {
    return alarmFactor(lag1);
  }

  /** The verdict as a sentence for a screen or report. */
  public String words() {
    return switch (verdict) {
      case BELIEVABLE ->
          String.format(
              Locale.ROOT,
              "Neighbouring samples are not alike enough to matter (lag-1 autocorrelation %.2f).",
              lag1);
      case TOO_NARROW ->
          String.format(
              Locale.ROOT,
              "The limits are too narrow: neighbouring samples are alike (lag-1 autocorrelation"
                  + " %.2f, give or take %.2f), so moving ranges show only %.0f %% of the spread."
                  + " Expect about %.0f points in 1000 outside without any cause instead of 2.7."
                  + " Use limits from the spread over days, sample less often, or chart residuals.",
              lag1,
              2 * standardError,
              100 * widthFactor(),
              falseAlarmsPer1000());
      case TOO_WIDE ->
          String.format(
              Locale.ROOT,
              "The limits are too wide: neighbouring samples differ more than samples far apart"
                  + " (lag-1 autocorrelation %.2f). Look for corrections after every sample.",
              lag1);
    };
  }

  private static double alarmFactor(double phi) {
    return outside(phi) / outside(0);
  }

  private static double outside(double phi) {
    return 2 * Normal.STANDARD.above(3 * Math.sqrt(1 - phi));
  }
}
