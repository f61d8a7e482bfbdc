package dev.filmward.drift;

/**
 * All regressors x at which a line {@code level + rate x} may have the value that is aimed at: the
 * solutions of {@code (level + rate x - aim)^2 <= spare Var(level + rate x)}. On the side of the
 * solution only; infinite where the rate may be 0.
 *
 * <p>Source: E. C. Fieller, Some problems in interval estimation, Journal of the Royal Statistical
 * Society B 16 (1954) 175.
 */
record Fieller(double lower, double upper) {

  static Fieller of(LineFit fit, double aim, double spare) {
    LineFit.Factors factors = fit.factors();
    double gap = aim - fit.level();
    double squared = fit.rate() * fit.rate() - spare * factors.rate();
    double half = -gap * fit.rate() - spare * factors.cross();
    double constant = gap * gap - spare * factors.level();
    double discriminant = half * half - squared * constant;
    if (squared > 0) {
      double root = Math.sqrt(Math.max(0, discriminant));
      return new Fieller((-half - root) / squared, (-half + root) / squared);
    }
    if (discriminant <= 0) {
      return new Fieller(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }
    double root = Math.sqrt(discriminant);
    return new Fieller((-half - root) / squared, Double.POSITIVE_INFINITY);
  }
}
