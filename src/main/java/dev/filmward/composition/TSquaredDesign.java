package dev.filmward.composition;

import dev.filmward.stats.BetaNumbers;
import dev.filmward.stats.FisherF;
import java.io.Serializable;

/**
 * From what a distance of Hotelling is computed, which settles its limits for normal vectors. The
 * probability alpha of a point beyond its limit is 0.0027 where limits of three sigma are meant.
 * Immutable.
 *
 * <p>Source: N. D. Tracy, J. C. Young and R. L. Mason, Multivariate control charts for individual
 * observations, Journal of Quality Technology 24 (1992) 88; F. B. Alt, Multivariate quality
 * control, Encyclopedia of Statistical Sciences 6 (1985) 110, for subgroups; J. H. Sullivan and W.
 * H. Woodall, A comparison of multivariate control charts for individual observations, Journal of
 * Quality Technology 28 (1996) 398, for successive differences, whose limits are approximate; R. L.
 * Mason, N. D. Tracy and J. C. Young, Decomposition of T2 for multivariate control chart
 * interpretation, Journal of Quality Technology 27 (1995) 99, for the terms.
 *
 * @param width numbers in a vector
 * @param samples in the baseline
 * @param size vectors in a sample: 1, or the size of subgroups
 */
public record TSquaredDesign(int width, long samples, int size, CovarianceEstimate estimate)
    implements Serializable {
  private static final long serialVersionUID = 1L;

  public TSquaredDesign {
    if (width < 1 || samples < 2 || size < 1) {
      throw new IllegalArgumentException(
          "no distance of " + width + " numbers from " + samples + " samples of " + size);
    }
    if (size > 1 && estimate == CovarianceEstimate.SUCCESSIVE) {
      throw new IllegalArgumentException("successive differences are for samples of one vector");
    }
  }

  /** Samples below which covariances are too uncertain to freeze limits: ten for each number. */
  public static int fewestSamples(int width) {
    return 10 * width;
  }

  /** The same baseline looked at in fewer numbers. */
  TSquaredDesign ofWidth(int fewer) {
    return new TSquaredDesign(fewer, samples, size, estimate);
  }

  /** Of the covariances; for successive differences approximate, and not whole. */
  public double degrees() {
    if (size > 1) {
      return samples * (size - 1.0);
    }
    double spans = samples - 1.0;
    return estimate == CovarianceEstimate.SAMPLE ? spans : 2 * spans * spans / (3.0 * samples - 4);
  }

  /**
   * Upper limit; there is no lower one.
   *
   * @throws IllegalStateException if the baseline is too short for so many numbers
   */
  public double limit(Phase phase, double alpha) {
    if (phase == Phase.BASELINE && size == 1) {
      return ofSingleVectorsInBaseline(alpha);
    }
    double fromMean = phase == Phase.BASELINE ? 1 - 1.0 / samples : 1 + 1.0 / samples;
    double rest = degrees() - width + 1;
    checkRest(rest);
    return fromMean * width * degrees() / rest * new FisherF(width, rest).upperQuantile(alpha);
  }

  private double ofSingleVectorsInBaseline(double alpha) {
    double rest = estimate == CovarianceEstimate.SAMPLE ? degrees() - width : degrees() - width - 1;
    checkRest(rest);
    double scale = (samples - 1.0) * (samples - 1.0) / samples;
    return scale * new BetaNumbers(width / 2.0, rest / 2).upperQuantile(alpha);
  }

  /**
   * Limit of a single term of a distance, given other numbers.
   *
   * @param others how many numbers are given, 0 for a term by itself
   */
  public double termLimit(int others, double alpha) {
    double rest = degrees() - others;
    checkRest(rest);
    return (1 + 1.0 / samples) * degrees() / rest * new FisherF(1, rest).upperQuantile(alpha);
  }

  /**
   * The same for a sample of the baseline itself, whatever is given: its term is the square of a
   * coordinate of a random direction in samples - 1 dimensions, the orthogonal one that the term
   * adds, and so has the beta distribution of one number.
   */
  double termLimit(Phase phase, int others, double alpha) {
    return phase == Phase.BASELINE
        ? ofWidth(1).limit(Phase.BASELINE, alpha)
        : termLimit(others, alpha);
  }

  private void checkRest(double rest) {
    if (!(rest > 0)) {
      throw new IllegalStateException(
          samples + " samples are too few for " + width + " numbers; collect more");
    }
  }
}
