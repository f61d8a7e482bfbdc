package dev.filmward.stats;

/** What may be asked of a quantile. */
final class Probability {
  private Probability() {}

  static void check(double p) {
    if (!(p > 0 && p < 1)) {
      throw new IllegalArgumentException("a quantile is for a probability in (0, 1), not " + p);
    }
  }
}
