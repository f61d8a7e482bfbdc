package dev.filmward.capability;

/**
 * How sure an index is, at one confidence. To show a requirement the one-sided limit is enough; the
 * interval splits the doubt between its two ends. Immutable.
 *
 * @param atLeast one-sided lower limit: the true index is this or more
 * @param from lower end of the interval
 * @param to upper end of the interval
 */
public record IndexLimits(double atLeast, double from, double to) {
  public IndexLimits {
    if (!(from <= atLeast && atLeast <= to)) {
      throw new IllegalArgumentException(
          "limits out of order: " + from + " to " + to + ", at least " + atLeast);
    }
  }
}
