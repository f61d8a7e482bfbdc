package dev.filmward.capability;

import dev.filmward.stats.ChiSquare;

/**
 * The gate before any capability: do more samples signal than a steady process would make by
 * chance? Stable up to the count that chance reaches in one week of a hundred, after Poisson. False
 * signals come in small groups, so the gate is a little strict. Without samples nothing is stable.
 * Immutable.
 *
 * <p>Source: N. L. Johnson, S. Kotz and A. W. Kemp, Univariate Discrete Distributions (1992),
 * section 4.5: the tail of the Poisson distribution by chi-square.
 *
 * @param falseShare share of samples that signal though nothing has changed: the inverse of the
 *     average run length of the tests in use
 */
public record Stability(long samples, long samplesSignalled, double falseShare) {
  /** Of the four zone tests together: 1 in 91.75 (Champ and Woodall 1987). */
  public static final double FALSE_SHARE_OF_ZONE_TESTS = 1 / 91.75;

  private static final double RARE = 0.01;

  public Stability {
    if (!(samplesSignalled >= 0 && samplesSignalled <= samples)) {
      throw new IllegalArgumentException(samplesSignalled + " signals in " + samples + " samples");
    }
    if (!(falseShare > 0 && falseShare < 1)) {
      throw new IllegalArgumentException("a share lies between 0 and 1, not at " + falseShare);
    }
  }

  /** Judged by the four zone tests. */
  public static Stability ofZoneTests(long samples, long samplesSignalled) {
    return new Stability(samples, samplesSignalled, FALSE_SHARE_OF_ZONE_TESTS);
  }

  public boolean isStable() {
    return samples > 0 && (samplesSignalled == 0 || chance() >= RARE);
  }

  /** Probability of that many signals or more from a steady process. */
  private double chance() {
    return new ChiSquare(2.0 * samplesSignalled).below(2 * samples * falseShare);
  }

  public String words() {
    if (samples == 0) {
      return "Stability was not judged, so there is no capability, only performance.";
    }
    String count = samplesSignalled + " of " + samples + " samples signalled";
    return isStable()
        ? "The process is stable: " + count + ", no more than chance would make."
        : "The process is not stable: "
            + count
            + ". There is no capability, only performance: Pp and Ppk say what was made, not what"
            + " the line can do.";
  }
}
