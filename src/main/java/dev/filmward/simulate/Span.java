package dev.filmward.simulate;

/**
 * Samples from an index (from 0) up to, but not including, another.
 *
 * @param end {@link Integer#MAX_VALUE} for a span without an end
 */
record Span(int from, int end) {

  Span {
    if (!(from >= 0 && from < end)) {
      throw new IllegalArgumentException("no samples from " + from + " to before " + end);
    }
  }

  static Span from(int sample) {
    return new Span(sample, Integer.MAX_VALUE);
  }

  boolean contains(int sample) {
    return sample >= from && sample < end;
  }
}
