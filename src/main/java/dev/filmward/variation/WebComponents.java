package dev.filmward.variation;

import dev.filmward.stats.Normal;
import java.util.Locale;

/**
 * Where the variation of a web is, as variances in um2. Estimates of machine and cross direction
 * may come out below zero when there is next to nothing of them; they are kept as they came, and
 * count as zero. Immutable.
 *
 * @param samples whole samples
 * @param machineDirection from sample to sample
 * @param crossDirection steady differences between lanes
 * @param residual the rest: short-term, and the gauge's
 */
public record WebComponents(
    long samples,
    int lanes,
    double meanUm,
    double machineDirection,
    double crossDirection,
    double residual) {
  private static final double TOO_WIDE = 1.5;
  private static final double TOO_NARROW = 0.8;

  /** What ranges across the web do to the limits of the mean. */
  public enum Verdict {
    /** The limits fit the spread of the means. */
    SUITED,
    /** Steady lane differences widen the ranges: the limits are too wide to see a shift. */
    BLIND,
    /** Samples differ more than lanes show: the limits are too narrow and alarm without cause. */
    NERVOUS
  }

  /** Two standard deviations of a component in percent of the mean, as the trade writes it. */
  public double twoSigmaPercent(double component) {
    return 200 * Math.sqrt(Math.max(0, component)) / meanUm;
  }

  /** Half the distance of the limits that the range across the web gives the mean of a sample. */
  public double halfWidthUm() {
    return 3 * Math.sqrt((Math.max(0, crossDirection) + residual) / lanes);
  }

  /** Standard deviation of the means of a steady process. */
  public double sigmaOfMeansUm() {
    return Math.sqrt(Math.max(0, machineDirection) + residual / lanes);
  }

  /** Means of a steady process outside the limits from ranges, of 1000; 2.7 if they fitted. */
  public double falseSignalsPer1000() {
    double sigma = sigmaOfMeansUm();
    return sigma == 0 ? 0 : 2000 * Normal.STANDARD.above(halfWidthUm() / sigma);
  }

  /** Whether limits from ranges across the web fit, by how far they reach. */
  public Verdict verdict() {
    double reach = reach();
    if (reach > TOO_WIDE) {
      return Verdict.BLIND;
    }
    return reach < TOO_NARROW ? Verdict.NERVOUS : Verdict.SUITED;
  }

  /** The verdict as a sentence for a screen or report. */
  public String words() {
    return switch (verdict()) {
      case SUITED -> "Limits from the range across the web fit the spread of the means.";
      case BLIND ->
          String.format(
              Locale.ROOT,
              "Steady lane differences widen the range, so the limits of the mean reach %.1f times"
                  + " as far as they should and a shift is seen late: chart level, profile and"
                  + " spread apart (three-way chart).",
              reach());
      case NERVOUS ->
          String.format(
              Locale.ROOT,
              "Samples differ more than the lanes of one sample show: expect about %.0f means in"
                  + " 1000 outside the limits without any cause. Chart level, profile and spread"
                  + " apart (three-way chart).",
              falseSignalsPer1000());
    };
  }

  /** How far the limits reach, as a multiple of three standard deviations of the means. */
  private double reach() {
    double right = 3 * sigmaOfMeansUm();
    return right == 0 ? 1 : halfWidthUm() / right;
  }
}
