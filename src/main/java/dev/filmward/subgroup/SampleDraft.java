package dev.filmward.subgroup;

import dev.filmward.film.ReadingRun;
import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;

/**
 * A sample whose readings are still coming in.
 *
 * <p>A place (layer and lane) has one value here: the same value again is no news, another one is
 * refused, so that whoever holds the draft can keep both. "Not measured" never replaces a reading.
 * The time is the earliest that any row gave, cut to microseconds. Of two temperatures of a lane
 * the later one stands. Mutable; for one thread.
 */
public final class SampleDraft {
  private SampleKey key;
  private Structure structure;
  private Instant earliestRow;
  private int layers;
  private int[] lanes = new int[8];

  /** All layers of the first lane, of the second, and so on, in the order of {@code lanes}. */
  private double[] um;

  /** Degrees of each lane, in the order of {@code lanes}; empty until there is one. */
  private double[] celsius = {};

  private int laneCount;
  private int lastColumn;
  private long number;

  public SampleDraft(SampleKey key, Structure structure, Instant takenAt) {
    this.key = key;
    this.structure = structure;
    this.earliestRow = takenAt;
    this.layers = structure.reported().size();
    this.um = new double[layers * lanes.length];
  }

  /** Makes it the draft of another sample; nothing of this one is left. */
  SampleDraft reuse(SampleKey otherKey, Structure otherStructure, Instant takenAt) {
    key = otherKey;
    structure = otherStructure;
    earliestRow = takenAt;
    layers = otherStructure.reported().size();
    laneCount = 0;
    celsius = new double[0];
    if (um.length < layers * lanes.length) {
      um = new double[layers * lanes.length];
    }
    return this;
  }

  public SampleKey key() {
    return key;
  }

  public Structure structure() {
    return structure;
  }

  /** How many drafts its assembler had opened before it. */
  public long number() {
    return number;
  }

  void number(long opened) {
    number = opened;
  }

  /** The sample's time is the earliest of its rows. */
  public void seenAt(Instant takenAt) {
    if (takenAt.isBefore(earliestRow)) {
      earliestRow = takenAt;
    }
  }

  /** The sample's time so far, cut to microseconds. */
  public Instant takenAt() {
    return earliestRow.truncatedTo(ChronoUnit.MICROS);
  }

  /** Notes a reading in micrometres, and says what it is to what was there. */
  public Place put(int position, int lane, double thicknessUm) {
    int place = column(lane) * layers + position - 1;
    double known = um[place];
    if (Double.isNaN(known)) {
      um[place] = thicknessUm;
      return Place.FILLED;
    }
    return known == thicknessUm ? Place.SAME : Place.TAKEN;
  }

  /**
   * Notes readings of a run, as long as there is none yet at their places.
   *
   * @return which one was the first that was not noted, or the size of the run
   */
  int fill(ReadingRun run, int from) {
    for (int i = from; i < run.size(); i++) {
      int place = column(run.lane(i)) * layers + run.position(i) - 1;
      if (!Double.isNaN(um[place])) {
        return i;
      }
      um[place] = run.um(i);
    }
    return run.size();
  }

  /** Notes that a place was looked at and not measured. */
  public void putMissing(int lane) {
    column(lane);
  }

  /** Notes how warm the film was at a lane, degrees Celsius. */
  public void putCelsius(int lane, double degrees) {
    int column = column(lane);
    if (celsius.length < lanes.length) {
      int known = celsius.length;
      celsius = Arrays.copyOf(celsius, lanes.length);
      Arrays.fill(celsius, known, celsius.length, Double.NaN);
    }
    celsius[column] = degrees;
  }

  /**
   * Puts in all readings of another draft of the same sample.
   *
   * @return {@link Place#TAKEN} if a place has another value here, which stays; {@link Place#SAME}
   *     if one has the same value; else {@link Place#FILLED}
   */
  public Place putAll(SampleDraft other) {
    seenAt(other.earliestRow);
    Place worst = Place.FILLED;
    for (int column = 0; column < other.laneCount; column++) {
      putMissing(other.lanes[column]);
      if (column < other.celsius.length && !Double.isNaN(other.celsius[column])) {
        putCelsius(other.lanes[column], other.celsius[column]);
      }
      for (int position = 1; position <= layers; position++) {
        double thicknessUm = other.um[column * layers + position - 1];
        if (!Double.isNaN(thicknessUm)) {
          Place place = put(position, other.lanes[column], thicknessUm);
          worst = place.compareTo(worst) > 0 ? place : worst;
        }
      }
    }
    return worst;
  }

  public Sample toSample() {
    sortLanes();
    double[][] byPosition = new double[layers][laneCount];
    for (int column = 0; column < laneCount; column++) {
      for (int layer = 0; layer < layers; layer++) {
        byPosition[layer][column] = um[column * layers + layer];
      }
    }
    Sample sample = new Sample(key, takenAt(), Arrays.copyOf(lanes, laneCount), byPosition);
    return celsius.length == 0 ? sample : sample.atCelsius(Arrays.copyOf(celsius, laneCount));
  }

  int layers() {
    return layers;
  }

  int laneCount() {
    return laneCount;
  }

  /** Thickness in a lane counted from 0, NaN where it was not measured. */
  double umOrNaN(int layerIndex, int column) {
    return um[column * layers + layerIndex];
  }

  /** Brings lanes into ascending order, which they mostly are in. */
  void sortLanes() {
    for (int i = 1; i < laneCount; i++) {
      if (lanes[i - 1] > lanes[i]) {
        sort();
        return;
      }
    }
  }

  private void sort() {
    long[] laneAndColumn = new long[laneCount];
    for (int i = 0; i < laneCount; i++) {
      laneAndColumn[i] = ((long) lanes[i] << 32) | i;
    }
    Arrays.sort(laneAndColumn);
    double[] sorted = new double[um.length];
    double[] sortedCelsius = celsius.clone();
    for (int i = 0; i < laneCount; i++) {
      int column = (int) laneAndColumn[i];
      lanes[i] = (int) (laneAndColumn[i] >>> 32);
      System.arraycopy(um, column * layers, sorted, i * layers, layers);
      if (celsius.length > 0) {
        sortedCelsius[i] = celsius[column];
      }
    }
    um = sorted;
    celsius = sortedCelsius;
  }

  private int column(int lane) {
    if (lastColumn < laneCount && lanes[lastColumn] == lane) {
      return lastColumn;
    }
    for (int i = 0; i < laneCount; i++) {
      if (lanes[i] == lane) {
        lastColumn = i;
        return i;
      }
    }
    lastColumn = open(lane);
    return lastColumn;
  }

  private int open(int lane) {
    if (laneCount == lanes.length) {
      lanes = Arrays.copyOf(lanes, laneCount * 2);
      um = Arrays.copyOf(um, Math.max(um.length, layers * lanes.length));
    }
    lanes[laneCount] = lane;
    Arrays.fill(um, laneCount * layers, (laneCount + 1) * layers, Double.NaN);
    return laneCount++;
  }
}
