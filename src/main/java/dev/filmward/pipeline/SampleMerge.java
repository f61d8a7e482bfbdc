package dev.filmward.pipeline;

import dev.filmward.film.Sample;
import dev.filmward.store.SampleTable.Correction;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/**
 * Joins what came of a sample to what was kept of it. The same value again is known; another value
 * for the same place is a correction, and the one that came stands; what was not measured now
 * leaves the kept value alone. So it is with temperatures. The time is the earlier of both.
 * Immutable.
 */
final class SampleMerge {
  private final Sample merged;
  private final List<Correction> corrections = new ArrayList<>();
  private final List<Correction> temperatures = new ArrayList<>();
  private int fresh;
  private int known;

  /**
   * @param kept what was there
   * @param came another part of the same sample
   */
  SampleMerge(Sample kept, Sample came) {
    int[] lanes = lanes(kept, came);
    double[][] um = new double[came.layers()][lanes.length];
    for (double[] row : um) {
      Arrays.fill(row, Double.NaN);
    }
    copy(kept, lanes, um);
    apply(came, lanes, um);
    Sample joined =
        new Sample(
            kept.key(),
            came.takenAt().isBefore(kept.takenAt()) ? came.takenAt() : kept.takenAt(),
            lanes,
            um);
    merged =
        kept.hasTemperature() || came.hasTemperature()
            ? joined.atCelsius(celsius(kept, came, lanes))
            : joined;
  }

  Sample merged() {
    return merged;
  }

  List<Correction> corrections() {
    return corrections;
  }

  /** Temperatures of the film that took the place of others. */
  List<Correction> temperatures() {
    return temperatures;
  }

  int fresh() {
    return fresh;
  }

  int known() {
    return known;
  }

  private static int[] lanes(Sample kept, Sample came) {
    TreeSet<Integer> lanes = new TreeSet<>();
    for (int i = 0; i < kept.laneCount(); i++) {
      lanes.add(kept.lane(i));
    }
    for (int i = 0; i < came.laneCount(); i++) {
      lanes.add(came.lane(i));
    }
    return lanes.stream().mapToInt(Integer::intValue).toArray();
  }

  private static void copy(Sample from, int[] lanes, double[][] um) {
    for (int i = 0; i < from.laneCount(); i++) {
      int column = Arrays.binarySearch(lanes, from.lane(i));
      for (int position = 1; position <= Math.min(from.layers(), um.length); position++) {
        if (from.isMeasured(position, i)) {
          um[position - 1][column] = from.thicknessUm(position, i);
        }
      }
    }
  }

  private void apply(Sample came, int[] lanes, double[][] um) {
    for (int i = 0; i < came.laneCount(); i++) {
      int column = Arrays.binarySearch(lanes, came.lane(i));
      for (int position = 1; position <= came.layers(); position++) {
        if (came.isMeasured(position, i)) {
          double value = came.thicknessUm(position, i);
          note(position, came.lane(i), um[position - 1][column], value);
          um[position - 1][column] = value;
        }
      }
    }
  }

  private double[] celsius(Sample kept, Sample came, int[] lanes) {
    double[] celsius = new double[lanes.length];
    Arrays.fill(celsius, Double.NaN);
    for (int i = 0; i < kept.laneCount(); i++) {
      celsius[Arrays.binarySearch(lanes, kept.lane(i))] = kept.celsius(i).orElse(Double.NaN);
    }
    for (int i = 0; i < came.laneCount(); i++) {
      int column = Arrays.binarySearch(lanes, came.lane(i));
      double before = celsius[column];
      celsius[column] = came.celsius(i).orElse(before);
      if (!Double.isNaN(before) && celsius[column] != before) {
        temperatures.add(Correction.ofTemperature(came.lane(i), before, celsius[column]));
      }
    }
    return celsius;
  }

  private void note(int position, int lane, double before, double now) {
    if (Double.isNaN(before)) {
      fresh++;
    } else if (before == now) {
      known++;
    } else {
      corrections.add(new Correction(position, lane, before, now));
    }
  }
}
