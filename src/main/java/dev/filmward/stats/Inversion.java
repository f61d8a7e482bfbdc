package dev.filmward.stats;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Finds where a tail probability that falls or rises has a given value, to the last digits of a
 * double. The equation is solved for the logarithm of the probability, on a scale that the caller
 * chooses (logarithm of a positive value, for instance), from brackets that grow by doubling.
 *
 * <p>Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 4, by way
 * of Commons Math.
 */
final class Inversion {
  private static final double LOG_OF_NOTHING = -800;
  private static final double RELATIVE = 1e-15;
  private static final double ABSOLUTE = 1e-16;
  private static final int MOST_STEPS = 500;

  private Inversion() {}

  /** The point where {@code tail} is {@code p}, sought from {@code start}. */
  static double solve(DoubleUnaryOperator tail, double p, double start) {
    DoubleUnaryOperator excess = x -> logRatio(tail.applyAsDouble(x), p);
    double here = excess.applyAsDouble(start);
    if (here == 0) {
      return start;
    }
    double step = excess.applyAsDouble(start + 1) > excess.applyAsDouble(start - 1) ? 1 : -1;
    step = here > 0 ? -step : step;
    double near = start;
    double far = start + step;
    while (Math.signum(excess.applyAsDouble(far)) == Math.signum(here)) {
      near = far;
      step *= 2;
      far += step;
      if (!Double.isFinite(far)) {
        throw new ArithmeticException("no point has the probability " + p);
      }
    }
    return new BrentSolver(RELATIVE, ABSOLUTE, 0)
        .solve(MOST_STEPS, excess::applyAsDouble, Math.min(near, far), Math.max(near, far));
  }

  private static double logRatio(double tail, double p) {
    return tail > 0 ? Math.max(LOG_OF_NOTHING, Math.log(tail / p)) : LOG_OF_NOTHING;
  }
}
