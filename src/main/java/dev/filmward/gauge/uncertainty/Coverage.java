package dev.filmward.gauge.uncertainty;

import dev.filmward.stats.Normal;
import dev.filmward.stats.StudentT;

/**
 * From a combined standard uncertainty to an expanded one (JCGM 100, chapter 6 and annex G).
 * Immutable.
 *
 * @param probability of the interval; of the factor 2 it is 95.45 % where the result is normal
 */
public record Coverage(Kind kind, double probability) {
  private static final double TWO_SIGMA = 0.9545;

  /** The plain factor 2. */
  public static final Coverage TWO = new Coverage(Kind.FACTOR_TWO, TWO_SIGMA);

  /** Where the factor comes from. */
  public enum Kind {
    FACTOR_TWO,
    STUDENT
  }

  public Coverage {
    if (!(probability > 0 && probability < 1)) {
      throw new IllegalArgumentException("a probability lies between 0 and 1, not " + probability);
    }
  }

  /** The quantile of Student's t for this probability. */
  public static Coverage student(double probability) {
    return new Coverage(Kind.STUDENT, probability);
  }

  /**
   * The factor for effective degrees of freedom, which are cut down to a whole number (JCGM 100,
   * G.4.1); at least one is taken.
   */
  public double factor(double effectiveDegrees) {
    if (kind == Kind.FACTOR_TWO) {
      return 2;
    }
    double above = (1 - probability) / 2;
    double whole = Math.max(1, Math.floor(effectiveDegrees));
    return Double.isInfinite(whole)
        ? Normal.STANDARD.upperQuantile(above)
        : new StudentT(whole).upperQuantile(above);
  }
}
