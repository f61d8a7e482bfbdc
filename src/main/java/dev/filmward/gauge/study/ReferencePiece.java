package dev.filmward.gauge.study;

import dev.filmward.stats.Moments;
import dev.filmward.stats.StudentT;
import java.util.List;

/**
 * A piece whose thickness is known from elsewhere, and what the gauge read of it. Immutable.
 *
 * <p>Source: bias and its t test as in AIAG, Measurement Systems Analysis, 4th ed. (2010), chapter
 * III B (from memory).
 *
 * @param referenceUm its thickness
 * @param um at least two readings, not all alike
 */
public record ReferencePiece(String name, double referenceUm, List<Double> um) {
  /** How sure the limits of a bias are. */
  public static final double CONFIDENCE = 0.95;

  public ReferencePiece {
    um = List.copyOf(um);
    if (!Double.isFinite(referenceUm)) {
      throw new IllegalArgumentException("a reference is finite, not " + referenceUm);
    }
  }

  /**
   * How far the gauge is off on this piece, um.
   *
   * @param deviation standard deviation of single readings
   * @param t ratio of the bias to its standard error
   * @param p two-sided probability of such a ratio if there were no bias
   */
  public record Bias(
      double value, double deviation, double t, double p, double lower, double upper) {
    /** Whether it is more than chance makes, at the 95 % level. */
    public boolean isReal() {
      return lower > 0 || upper < 0;
    }
  }

  /** Whether its readings say how they spread. */
  public boolean hasSpread() {
    return um.stream().distinct().count() > 1;
  }

  public double variance() {
    double deviation = moments().standardDeviation().orElseThrow();
    return deviation * deviation;
  }

  /** There must be a spread ({@link #hasSpread}). */
  public Bias bias() {
    if (!hasSpread()) {
      throw new IllegalStateException("readings that are all alike have no test of their bias");
    }
    Moments off = moments();
    double deviation = off.standardDeviation().orElseThrow();
    double error = deviation / Math.sqrt(um.size());
    StudentT law = new StudentT(um.size() - 1);
    double half = law.upperQuantile((1 - CONFIDENCE) / 2) * error;
    double t = off.mean() / error;
    return new Bias(
        off.mean(), deviation, t, 2 * law.above(Math.abs(t)), off.mean() - half, off.mean() + half);
  }

  private Moments moments() {
    Moments off = new Moments();
    um.forEach(value -> off.add(value - referenceUm));
    return off;
  }
}
