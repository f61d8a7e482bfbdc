package dev.filmward.subgroup;

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
 * The time is the earliest that any row gave, cut to microseconds. Mutable; for one thread.
 */
public final class SampleDraft {
  private final SampleKey key;
  private final Structure structure;
  private Instant earliestRow;
  private int[] lanes = new int[8];
  private double[][] um;
  private int laneCount;

  public SampleDraft(SampleKey key, Structure structure, Instant takenAt) {
    this.key = key;
    this.structure = structure;
    this.earliestRow = takenAt;
    this.um = new double[structure.reported().size()][lanes.length];
  }

  public SampleKey key() {
    return key;
  }

  public Structure structure() {
    return structure;
  }

  /** The sample's time is the earliest of its rows. */
  public void seenAt(Instant takenAt) {
    if (takenAt.isBefore(earliestRow)) {
      earliestRow = takenAt;
    }
  }

  /** Notes a reading in micrometres, and says what it is to what was there. */
  public Place put(int position, int lane, double thicknessUm) {
    int column = column(lane);
    double known = um[position - 1][column];
    if (Double.isNaN(known)) {
      um[position - 1][column] = thicknessUm;
      return Place.FILLED;
    }
    return known == thicknessUm ? Place.SAME : Place.TAKEN;
  }

  /** Notes that a place was looked at and not measured. */
  public void putMissing(int lane) {
    column(lane);
  }

  public Sample toSample() {
    int[] order = laneOrder();
    int[] sortedLanes = new int[laneCount];
    double[][] sorted = new double[um.length][laneCount];
    for (int i = 0; i < laneCount; i++) {
      sortedLanes[i] = lanes[order[i]];
      for (int layer = 0; layer < um.length; layer++) {
        sorted[layer][i] = um[layer][order[i]];
      }
    }
    return new Sample(key, earliestRow.truncatedTo(ChronoUnit.MICROS), sortedLanes, sorted);
  }

  private int[] laneOrder() {
    long[] laneAndColumn = new long[laneCount];
    for (int i = 0; i < laneCount; i++) {
      laneAndColumn[i] = ((long) lanes[i] << 32) | i;
    }
    Arrays.sort(laneAndColumn);
    int[] order = new int[laneCount];
    for (int i = 0; i < laneCount; i++) {
      order[i] = (int) laneAndColumn[i];
    }
    return order;
  }

  private int column(int lane) {
    for (int i = 0; i < laneCount; i++) {
      if (lanes[i] == lane) {
        return i;
      }
    }
    if (laneCount == lanes.length) {
      grow();
    }
    lanes[laneCount] = lane;
    for (double[] row : um) {
      row[laneCount] = Double.NaN;
    }
    return laneCount++;
  }

  private void grow() {
    lanes = Arrays.copyOf(lanes, lanes.length * 2);
    for (int i = 0; i < um.length; i++) {
      um[i] = Arrays.copyOf(um[i], lanes.length);
    }
  }
}
