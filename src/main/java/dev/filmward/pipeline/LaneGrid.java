package dev.filmward.pipeline;

import dev.filmward.capability.LaneValues;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Gathers lanes in time: a column for so many neighbouring samples, a mean for each lane of it. A
 * step: takes samples in time order. Memory grows with columns times lanes. For one thread.
 */
final class LaneGrid {
  /** More lanes than that no screen can tell apart. */
  static final int MOST_LANES = 200;

  private final Characteristic characteristic;
  private final int samplesPerColumn;
  private final TreeMap<Integer, Integer> slots = new TreeMap<>();
  private final List<Sums> columns = new ArrayList<>();
  private Instant from = Instant.EPOCH;
  private Instant to = Instant.EPOCH;
  private int inColumn;
  private Sums sums = new Sums();

  LaneGrid(Characteristic characteristic, int samplesPerColumn) {
    this.characteristic = characteristic;
    this.samplesPerColumn = samplesPerColumn;
  }

  private static final class Sums {
    private double[] sum = new double[8];
    private int[] count = new int[8];
    private Instant from = Instant.EPOCH;
    private Instant to = Instant.EPOCH;

    private void add(int slot, double value) {
      if (slot >= sum.length) {
        sum = Arrays.copyOf(sum, 2 * slot);
        count = Arrays.copyOf(count, 2 * slot);
      }
      sum[slot] += value;
      count[slot]++;
    }

    private Optional<Double> mean(int slot) {
      return slot < sum.length && count[slot] > 0
          ? Optional.of(sum[slot] / count[slot])
          : Optional.empty();
    }
  }

  void add(Sample sample) {
    double[] values = LaneValues.of(sample, characteristic);
    from = inColumn == 0 ? sample.takenAt() : from;
    to = sample.takenAt();
    for (int i = 0; i < values.length; i++) {
      int slot = slot(sample.lane(i));
      if (slot >= 0 && !Double.isNaN(values[i])) {
        sums.add(slot, values[i]);
      }
    }
    inColumn++;
    if (inColumn == samplesPerColumn) {
      close();
    }
  }

  /** Where a lane is kept; -1 for one too many. */
  private int slot(int lane) {
    Integer known = slots.get(lane);
    if (known != null) {
      return known;
    }
    if (slots.size() == MOST_LANES) {
      return -1;
    }
    slots.put(lane, slots.size());
    return slots.size() - 1;
  }

  private void close() {
    sums.from = from;
    sums.to = to;
    columns.add(sums);
    sums = new Sums();
    inColumn = 0;
  }

  LayerLook.Lanes lanes() {
    if (inColumn > 0) {
      close();
    }
    List<Integer> slotsInOrder = List.copyOf(slots.values());
    List<LayerLook.Column> shown = new ArrayList<>();
    for (Sums each : columns) {
      shown.add(
          new LayerLook.Column(each.from, each.to, slotsInOrder.stream().map(each::mean).toList()));
    }
    return new LayerLook.Lanes(List.copyOf(slots.keySet()), samplesPerColumn, shown);
  }
}
