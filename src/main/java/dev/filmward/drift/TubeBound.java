package dev.filmward.drift;

import dev.filmward.stats.StudentT;

/**
 * Bound for the probability that the best of many regressors fits noise as well as it did. The
 * regressors, made free of the level and of length 1 in the metric of the noise, lie on a path on a
 * sphere; noise comes near that path the more often the longer it is: {@code P(max |T| > b) <=
 * P(|T| > b) + length / pi (1 + b^2 / v)^(-v / 2)} with v degrees of freedom. Mutable while
 * regressors are added, in order.
 *
 * <p>Source: D. Q. Naiman, Conservative confidence bands in curvilinear regression, The Annals of
 * Statistics 14 (1986) 896, after H. Hotelling, Tubes and spheres in n-spaces (1939).
 */
final class TubeBound {
  private final Window window;
  private final double phi;
  private double[] last = {};
  private double lastLevel;
  private double lastSquare;
  private double length;

  TubeBound(Window window) {
    this.window = window;
    this.phi = Regression.levelPhi(window);
  }

  /** Adds the next regressor, which is 0 before the index {@code from}. */
  void add(double[] regressor, int from) {
    double oneOne = window.oneOne.at(phi);
    double level = Ar1Product.of(regressor, window.ones, from).at(phi);
    double square = Ar1Product.of(regressor, regressor, from).at(phi) - level * level / oneOne;
    if (last.length > 0) {
      double cross = Ar1Product.of(regressor, last, from).at(phi) - level * lastLevel / oneOne;
      length += Math.acos(Math.max(-1, Math.min(1, cross / Math.sqrt(square * lastSquare))));
    }
    last = regressor;
    lastLevel = level;
    lastSquare = square;
  }

  double tail(double b, double degrees) {
    double ends = 2 * new StudentT(degrees).above(b);
    double path = length / Math.PI * Math.pow(1 + b * b / degrees, -degrees / 2);
    return Math.min(1, ends + path);
  }
}
