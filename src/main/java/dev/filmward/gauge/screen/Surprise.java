package dev.filmward.gauge.screen;

/**
 * How surprising it is that a layer deviates, in natural logarithms of odds against its not
 * deviating at all; 0 for no deviation.
 *
 * <p>A deviation is a relative one (the logarithm of the ratio to what is usual). Mostly a layer is
 * where it was, with the gauge's noise and 3 % of the process's own; one time in ten the process
 * moved it, more likely down (25 %, feeders run empty) than up (17 %, no extruder gives much more
 * than it is set to). The shares are common practice, no source; proven by simulation ({@code
 * ScreeningProofTest}). Stateless.
 */
final class Surprise {
  private static final double USUAL = 0.03;
  private static final double MOVED = 0.1;
  private static final double DOWN = 0.25;
  private static final double UP = 0.17;

  private Surprise() {}

  /**
   * @param noise relative standard deviation of the reading
   */
  static double of(double deviation, double noise) {
    double still = Math.sqrt(noise * noise + USUAL * USUAL);
    double moved = Math.sqrt(noise * noise + (deviation > 0 ? UP * UP : DOWN * DOWN));
    double least = Math.log((1 - MOVED) / still + MOVED / moved);
    double square = deviation * deviation / 2;
    double a = Math.log((1 - MOVED) / still) - square / (still * still);
    double b = Math.log(MOVED / moved) - square / (moved * moved);
    double greater = Math.max(a, b);
    return least - greater - Math.log1p(Math.exp(Math.min(a, b) - greater));
  }
}
