package dev.filmward.report;

import dev.filmward.capability.Stability;

/**
 * The gate before any capability, with the tests that the report counts: the four zone tests of the
 * means, and ranges.
 */
final class Steadfast {
  /**
   * Ranges of five beyond three sigma without a cause (E. S. Pearson; ASTM MNL 7), as {@code
   * analyse} counts them.
   */
  private static final double OF_RANGES = 0.0046;

  private Steadfast() {}

  static Stability of(long judged, long signalled) {
    return new Stability(judged, signalled, Stability.FALSE_SHARE_OF_ZONE_TESTS + OF_RANGES);
  }
}
