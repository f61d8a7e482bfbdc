package dev.filmward.gauge.screen;

import dev.filmward.film.Sample;
import java.util.List;
import java.util.stream.IntStream;

/** A sample in times of flight, and which of its readings are no thickness. Immutable. */
final class HeardSample {
  /**
   * Readings so near to the range end, as a fraction of it, are at it; beyond it none is cut off.
   */
  private static final double AT_THE_END = 0.001;

  private final HeardFilm film;
  private final Sample sample;

  HeardSample(HeardFilm film, Sample sample) {
    this.film = film;
    this.sample = sample;
  }

  Sample sample() {
    return sample;
  }

  int lanes() {
    return sample.laneCount();
  }

  int layers() {
    return sample.layers();
  }

  /** Nothing, or zero, was exported. */
  boolean isBlank(int position, int laneIndex) {
    return !sample.isMeasured(position, laneIndex)
        || !(sample.thicknessUm(position, laneIndex) > 0);
  }

  boolean isAtTheEnd(int position, int laneIndex) {
    return sample.isMeasured(position, laneIndex)
        && Math.abs(sample.thicknessUm(position, laneIndex) / film.greatestUm(position) - 1)
            < AT_THE_END;
  }

  /** NaN where the reading is no thickness. */
  double ns(int position, int laneIndex) {
    return isBlank(position, laneIndex) || isAtTheEnd(position, laneIndex)
        ? Double.NaN
        : film.ns(position, sample.thicknessUm(position, laneIndex));
  }

  /** By position, at one lane; NaN where blank, infinite where at the range end. */
  double[] nsAt(int laneIndex) {
    return IntStream.rangeClosed(1, layers())
        .mapToDouble(
            position ->
                isAtTheEnd(position, laneIndex)
                    ? Double.POSITIVE_INFINITY
                    : ns(position, laneIndex))
        .toArray();
  }

  /** Whether anything at all was read there. */
  boolean isLaneRead(int laneIndex) {
    return IntStream.rangeClosed(1, layers()).anyMatch(position -> !isBlank(position, laneIndex));
  }

  List<Integer> lanesRead() {
    return IntStream.range(0, lanes()).filter(this::isLaneRead).boxed().toList();
  }

  /** The gauge's numbers of some lanes. */
  List<Integer> numbers(List<Integer> laneIndexes) {
    return laneIndexes.stream().map(sample::lane).toList();
  }
}
