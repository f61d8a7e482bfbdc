package dev.filmward.diagnosis;

import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * The samples of a history as numbers: how far the mean of each layer is from the usual one, and
 * how far each lane is from where it usually is within its sample, both as fractions. Samples that
 * are flagged, or lack a layer, are not in it. Nobody writes to the arrays.
 */
final class FilmSeries {
  private static final double FEWEST_LANES = 0.5;

  final FilmHistory history;
  final Structure structure;
  final List<Sample> samples;
  final int layers;
  final int[] laneNumbers;

  /** By sample and layer: mean over the lanes less the usual one, over the usual one. */
  final double[][] level;

  /** By sample, layer and lane; NaN where nothing was measured. */
  final double[][][] lane;

  final double[] usualUm;

  /** Index of the last sample at or before the alarm. */
  final int alarm;

  private final double[][] effects;

  FilmSeries(FilmHistory history) {
    this.history = history;
    this.structure = history.structure();
    this.layers = structure.reported().size();
    this.laneNumbers = laneNumbers(history.samples());
    this.samples = usable(history, laneNumbers);
    int last = -1;
    for (int t = 0; t < samples.size(); t++) {
      last = samples.get(t).takenAt().isAfter(history.alarmedAt()) ? last : t;
    }
    this.alarm = last;
    this.usualUm = new double[layers];
    this.effects = new double[layers][laneNumbers.length];
    this.level = new double[samples.size()][layers];
    this.lane = new double[samples.size()][layers][laneNumbers.length];
    double[][][] um = thicknesses();
    for (int i = 0; i < layers; i++) {
      learnUsual(um, i);
      for (int t = 0; t < samples.size(); t++) {
        place(um[t][i], t, i);
      }
    }
  }

  private static List<Sample> usable(FilmHistory history, int[] lanes) {
    Set<Object> flagged = new HashSet<>();
    history.flags().forEach(flag -> flagged.add(flag.sample()));
    List<Sample> usable = new ArrayList<>();
    for (Sample sample : history.samples()) {
      if (!flagged.contains(sample.key()) && hasAllLayers(sample, lanes)) {
        usable.add(sample);
      }
    }
    return List.copyOf(usable);
  }

  private static boolean hasAllLayers(Sample sample, int[] lanes) {
    for (int position = 1; position <= sample.layers(); position++) {
      boolean measured = false;
      for (int j = 0; j < sample.laneCount(); j++) {
        boolean isKept = Arrays.binarySearch(lanes, sample.lane(j)) >= 0;
        measured |= isKept && sample.isMeasured(position, j) && sample.thicknessUm(position, j) > 0;
      }
      if (!measured) {
        return false;
      }
    }
    return true;
  }

  /** Lanes that at least half of the samples have. */
  private static int[] laneNumbers(List<Sample> samples) {
    TreeMap<Integer, Integer> counts = new TreeMap<>();
    for (Sample sample : samples) {
      for (int j = 0; j < sample.laneCount(); j++) {
        counts.merge(sample.lane(j), 1, Integer::sum);
      }
    }
    return counts.entrySet().stream()
        .filter(entry -> entry.getValue() >= FEWEST_LANES * samples.size())
        .mapToInt(Map.Entry::getKey)
        .toArray();
  }

  private double[][][] thicknesses() {
    double[][][] um = new double[samples.size()][layers][laneNumbers.length];
    for (int t = 0; t < um.length; t++) {
      Sample sample = samples.get(t);
      for (double[] row : um[t]) {
        Arrays.fill(row, Double.NaN);
      }
      for (int j = 0; j < sample.laneCount(); j++) {
        int at = Arrays.binarySearch(laneNumbers, sample.lane(j));
        for (int i = 0; at >= 0 && i < layers; i++) {
          um[t][i][at] = sample.isMeasured(i + 1, j) ? sample.thicknessUm(i + 1, j) : Double.NaN;
        }
      }
    }
    return um;
  }

  /** From the reference, else from the first half of what there is before the alarm. */
  private void learnUsual(double[][][] um, int layer) {
    int first = Math.min(um.length, Math.max(FilmHistory.FEWEST_BEFORE, alarm / 2));
    effects[layer] = effects(um, layer, first);
    double sum = 0;
    for (int t = 0; t < first; t++) {
      sum += mean(um[t][layer], effects[layer]);
    }
    usualUm[layer] =
        history.reference().isEmpty() ? sum / first : history.reference().get(layer).meanUm();
  }

  /**
   * What each lane is above the mean, as a fraction: of the reference, else of the first samples.
   */
  private double[] effects(double[][][] um, int layer, int first) {
    if (!history.reference().isEmpty()) {
      LayerReference usual = history.reference().get(layer);
      if (usual.laneEffectsUm().size() == laneNumbers.length) {
        return usual.laneEffectsUm().stream()
            .mapToDouble(effect -> effect / usual.meanUm())
            .toArray();
      }
    }
    double[] learnt = new double[laneNumbers.length];
    double[] none = new double[laneNumbers.length];
    double[] means = new double[first];
    for (int t = 0; t < first; t++) {
      means[t] = mean(um[t][layer], none);
    }
    for (int j = 0; j < laneNumbers.length; j++) {
      double sum = 0;
      int count = 0;
      for (int t = 0; t < first; t++) {
        double relative = um[t][layer][j] / means[t];
        if (!Double.isNaN(relative)) {
          sum += relative - 1;
          count++;
        }
      }
      learnt[j] = count == 0 ? 0 : sum / count;
    }
    return learnt;
  }

  private void place(double[] um, int t, int layer) {
    double mean = mean(um, effects[layer]);
    level[t][layer] = mean / usualUm[layer] - 1;
    for (int j = 0; j < um.length; j++) {
      lane[t][layer][j] = um[j] / mean - 1 - effects[layer][j];
    }
  }

  private static double mean(double[] um, double[] effects) {
    double sum = 0;
    int count = 0;
    for (int j = 0; j < um.length; j++) {
      if (!Double.isNaN(um[j])) {
        sum += um[j] / (1 + effects[j]);
        count++;
      }
    }
    return sum / count;
  }

  int size() {
    return samples.size();
  }

  int lanes() {
    return laneNumbers.length;
  }

  Instant at(int sample) {
    return samples.get(sample).takenAt();
  }

  /** Minutes since the first sample. */
  double minutes(int sample) {
    return Duration.between(at(0), at(sample)).toMillis() / 60_000.0;
  }

  /** The usual interval between samples in minutes: the median. */
  double intervalMinutes() {
    double[] gaps = new double[size() - 1];
    for (int t = 1; t < size(); t++) {
      gaps[t - 1] = minutes(t) - minutes(t - 1);
    }
    Arrays.sort(gaps);
    return gaps[gaps.length / 2];
  }

  double totalUm() {
    return Arrays.stream(usualUm).sum();
  }
}
