package dev.filmward.simulate;

/**
 * The gauge fails to measure more often than usual, in the layers that the event reaches.
 *
 * @param chance for each reading
 */
record LostEcho(Span span, Reach reach, double chance) implements Event {

  @Override
  public double factor(int sample, int position, int lane) {
    return 1;
  }

  @Override
  public double missing(int sample, int position, int lane) {
    return span.contains(sample) ? reach.weight(position) * chance : 0;
  }
}
