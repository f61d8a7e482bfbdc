package dev.filmward.stats;

/**
 * Student's t distribution, to 11 digits or more in both tails.
 *
 * <p>Source: Abramowitz and Stegun (1964), 26.7.1; quantiles are sought on the scale of the inverse
 * hyperbolic sine.
 *
 * @param degrees of freedom, above 0, need not be whole
 */
public record StudentT(double degrees) implements Distribution {

  public StudentT {
    if (!(degrees > 0) || !Double.isFinite(degrees)) {
      throw new IllegalArgumentException("degrees of freedom are above 0, not " + degrees);
    }
  }

  @Override
  public double below(double t) {
    return above(-t);
  }

  @Override
  public double above(double t) {
    double square = t * t;
    double outside =
        Double.isInfinite(square)
            ? 0
            : IncompleteBeta.below(
                degrees / (degrees + square), square / (degrees + square), degrees / 2, 0.5);
    return t >= 0 ? outside / 2 : 1 - outside / 2;
  }

  @Override
  public double quantile(double p) {
    return -upperQuantile(p);
  }

  @Override
  public double upperQuantile(double q) {
    Probability.check(q);
    return q > 0.5 ? -upperTailQuantile(1 - q) : upperTailQuantile(q);
  }

  private double upperTailQuantile(double q) {
    return q == 0.5 ? 0 : Math.sinh(Inversion.solve(u -> above(Math.sinh(u)), q, 1));
  }
}
