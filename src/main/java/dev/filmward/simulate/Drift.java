package dev.filmward.simulate;

/**
 * The layers concerned grow or thin by the same fraction at each sample, until a cap is reached.
 *
 * @param perSample fraction of the undisturbed thickness; the first sample has it once
 * @param cap greatest deviation, a positive fraction
 */
record Drift(Span span, Reach reach, double perSample, double cap) implements Event {

  Drift {
    if (!(cap > 0 && cap < 1)) {
      throw new IllegalArgumentException("the cap must be a fraction above 0, not " + cap);
    }
  }

  @Override
  public double factor(int sample, int position, int lane) {
    if (!span.contains(sample)) {
      return 1;
    }
    double deviation = perSample * (sample - span.from() + 1.0);
    return 1 + reach.weight(position) * Math.max(-cap, Math.min(cap, deviation));
  }
}
