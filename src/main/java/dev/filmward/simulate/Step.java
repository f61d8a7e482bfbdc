package dev.filmward.simulate;

/**
 * The layers concerned are thicker or thinner by a fraction for a time: all of them when the
 * haul-off speed changes, one of them, for a few samples, when a feed throat bridges.
 *
 * @param fraction of the thickness; negative is thinner
 */
record Step(Span span, Reach reach, double fraction) implements Event {

  @Override
  public double factor(int sample, int position, int lane) {
    return span.contains(sample) ? 1 + reach.weight(position) * fraction : 1;
  }
}
