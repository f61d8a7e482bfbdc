package dev.filmward.gauge.screen;

/**
 * How great a chi-square may be by chance, one time in 2000. By the cube root of Wilson and
 * Hilferty (PNAS 17 (1931) 684), which is within 1 % there. Stateless.
 */
final class Chance {
  /** The normal quantile of 1 - 1/2000. */
  private static final double Z = 3.2905;

  private Chance() {}

  static double greatestChiSquare(int degrees) {
    double part = 2.0 / (9 * degrees);
    double root = 1 - part + Z * Math.sqrt(part);
    return degrees * root * root * root;
  }
}
