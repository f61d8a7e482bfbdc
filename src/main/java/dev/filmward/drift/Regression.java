package dev.filmward.drift;

import java.util.function.ToDoubleFunction;

/**
 * Sums for {@code y = level + rate g + noise} with first-order autoregressive noise: least squares,
 * the noise's lag-1 coefficient phi, and generalised least squares at a coefficient. Immutable.
 *
 * <p>The coefficient of the residuals is too small by about {@code (p + (2 + p) phi) / n} where p
 * parameters were fitted; that is put right here. Source: M. G. Kendall, Note on bias in the
 * estimation of autocorrelation, Biometrika 41 (1954) 403, for a mean (p = 1); for more parameters
 * checked by simulation.
 *
 * @param window with the products of level and means
 * @param og product of level and regressor; {@code gg} and {@code gy} likewise
 */
record Regression(Window window, Ar1Product og, Ar1Product gg, Ar1Product gy) {
  /** A coefficient nearer to 1 cannot be told from a random walk in a week of samples. */
  private static final double GREATEST_PHI = 0.95;

  /** What is less than this part of the whole is rounding, not noise. */
  private static final double ROUNDING = 1e-13;

  /** The fit with the noise's coefficient as the residuals show it. */
  LineFit fit(int parameters) {
    return fitAt(phi(parameters));
  }

  LineFit fitAt(double phi) {
    double a = window.oneOne.at(phi);
    double b = og.at(phi);
    double d = gg.at(phi);
    double oy = window.oneMean.at(phi);
    double determinant = a * d - b * b;
    double rate = (a * gy.at(phi) - b * oy) / determinant;
    double level = (oy - b * rate) / a;
    double squares = window.meanMean.at(phi) - level * oy - rate * gy.at(phi);
    return new LineFit(
        phi,
        level,
        rate,
        Math.max(squares, ROUNDING * window.meanMean.at(phi)),
        new LineFit.Factors(d / determinant, -b / determinant, a / determinant));
  }

  private double phi(int parameters) {
    LineFit ordinary = fitAt(0);
    return corrected(
        window,
        residual(Ar1Product::plain, ordinary),
        residual(Ar1Product::lagged, ordinary) / 2,
        parameters);
  }

  private double residual(ToDoubleFunction<Ar1Product> part, LineFit fit) {
    double level = fit.level();
    double rate = fit.rate();
    return part.applyAsDouble(window.meanMean)
        - 2 * (level * part.applyAsDouble(window.oneMean) + rate * part.applyAsDouble(gy))
        + level * level * part.applyAsDouble(window.oneOne)
        + 2 * level * rate * part.applyAsDouble(og)
        + rate * rate * part.applyAsDouble(gg);
  }

  /** The coefficient of the means around their own level. */
  static double levelPhi(Window window) {
    return corrected(window, window.meanMean.plain(), window.meanMean.lagged() / 2, 1);
  }

  /** Whitened squares around one level. */
  static double levelSquares(Window window, double phi) {
    double oy = window.oneMean.at(phi);
    return window.meanMean.at(phi) - oy * oy / window.oneOne.at(phi);
  }

  private static double corrected(Window window, double squares, double products, int parameters) {
    if (!(squares > ROUNDING * window.meanMean.plain())) {
      return 0;
    }
    int n = window.size();
    double phi = (n * products / squares + parameters) / (n - 2 - parameters);
    return Math.max(-GREATEST_PHI, Math.min(GREATEST_PHI, phi));
  }
}
