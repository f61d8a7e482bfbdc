package dev.filmward.film;

import java.time.Instant;
import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * One set of readings taken together across the web: a thickness for each reported layer and lane,
 * some of which may be missing.
 *
 * <p>Lanes are whatever numbers the gauge gave them, ascending. A sample's time is the earliest of
 * its rows. A lane may have the temperature that the film had there. Immutable; NaN never leaves
 * this class as a value: ask {@link #isMeasured} first.
 */
public final class Sample {
  private static final double[] NOWHERE = {};

  private final SampleKey key;
  private final Instant takenAt;
  private final int[] lanes;
  private final double[][] umByPositionAndLane;

  /** Degrees by lane, NaN where it was not measured; nothing where it was nowhere. */
  private final double[] celsius;

  /**
   * A sample of readings; both arrays are copied.
   *
   * @param lanes lane numbers, strictly ascending
   * @param umByPositionAndLane a row for each reported layer in order, a column for each lane; NaN
   *     where nothing was measured
   */
  public Sample(SampleKey key, Instant takenAt, int[] lanes, double[][] umByPositionAndLane) {
    this(key, takenAt, lanes, umByPositionAndLane, NOWHERE);
  }

  private Sample(
      SampleKey key,
      Instant takenAt,
      int[] lanes,
      double[][] umByPositionAndLane,
      double[] celsius) {
    for (int i = 1; i < lanes.length; i++) {
      if (!(lanes[i - 1] < lanes[i])) {
        throw new IllegalArgumentException("lanes must ascend: " + Arrays.toString(lanes));
      }
    }
    for (double[] row : umByPositionAndLane) {
      if (row.length != lanes.length) {
        throw new IllegalArgumentException(
            lanes.length + " lanes but " + row.length + " readings of a layer");
      }
    }
    this.key = key;
    this.takenAt = takenAt;
    this.lanes = lanes.clone();
    this.umByPositionAndLane =
        Arrays.stream(umByPositionAndLane).map(double[]::clone).toArray(double[][]::new);
    this.celsius = Arrays.stream(celsius).allMatch(Double::isNaN) ? NOWHERE : celsius.clone();
  }

  /** The same readings under another key. */
  public Sample withKey(SampleKey other) {
    return new Sample(other, takenAt, lanes, umByPositionAndLane, celsius);
  }

  /**
   * The same readings, of film that was so warm.
   *
   * @param celsiusByLane degrees Celsius for each lane in order, NaN where it was not measured; may
   *     be empty
   */
  public Sample atCelsius(double[] celsiusByLane) {
    if (celsiusByLane.length != 0 && celsiusByLane.length != lanes.length) {
      throw new IllegalArgumentException(
          lanes.length + " lanes but " + celsiusByLane.length + " temperatures");
    }
    return new Sample(key, takenAt, lanes, umByPositionAndLane, celsiusByLane);
  }

  /** Degrees Celsius of the film at the lane at an index from 0, where that was measured. */
  public OptionalDouble celsius(int laneIndex) {
    return celsius.length == 0 || Double.isNaN(celsius[laneIndex])
        ? OptionalDouble.empty()
        : OptionalDouble.of(celsius[laneIndex]);
  }

  /** Whether the film's temperature was measured anywhere. */
  public boolean hasTemperature() {
    return celsius.length > 0;
  }

  public SampleKey key() {
    return key;
  }

  public Instant takenAt() {
    return takenAt;
  }

  /** How many reported layers there are places for. */
  public int layers() {
    return umByPositionAndLane.length;
  }

  public int laneCount() {
    return lanes.length;
  }

  /** The number that the gauge gave the lane at an index from 0. */
  public int lane(int index) {
    return lanes[index];
  }

  public boolean isMeasured(int position, int laneIndex) {
    return !Double.isNaN(umByPositionAndLane[position - 1][laneIndex]);
  }

  /** Thickness in micrometres; ask {@link #isMeasured} first. */
  public double thicknessUm(int position, int laneIndex) {
    double um = umByPositionAndLane[position - 1][laneIndex];
    if (Double.isNaN(um)) {
      throw new IllegalStateException(
          key + ", layer " + position + ", lane " + lanes[laneIndex] + " was not measured");
    }
    return um;
  }

  /** Readings that were measured, over all layers and lanes. */
  public int readings() {
    int count = 0;
    for (double[] row : umByPositionAndLane) {
      for (double um : row) {
        count += Double.isNaN(um) ? 0 : 1;
      }
    }
    return count;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Sample that
        && key.equals(that.key)
        && takenAt.equals(that.takenAt)
        && Arrays.equals(lanes, that.lanes)
        && Arrays.equals(celsius, that.celsius)
        && Arrays.deepEquals(umByPositionAndLane, that.umByPositionAndLane);
  }

  @Override
  public int hashCode() {
    return key.hashCode() * 31 + takenAt.hashCode();
  }

  @Override
  public String toString() {
    return "Sample[" + key + ", " + takenAt + ", " + readings() + " readings]";
  }
}
