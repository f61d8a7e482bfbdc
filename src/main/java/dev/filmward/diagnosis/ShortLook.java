package dev.filmward.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * Looks for a few samples in a row that are off and have the same level before and after them: what
 * lasts longer is a change of level. Robust: level and spread are medians of the neighbourhood.
 */
final class ShortLook {
  /** In-control weeks have none so clear; see {@code DiagnosisProofTest}. */
  static final double CLEAR = 6;

  private static final int LONGEST = 3;
  private static final int REACH = 12;
  private static final int FEWEST_AFTER = 2;
  private static final double AS_USUAL = 3.5;
  private static final double ALSO_OFF = 4;
  private static final int OLDEST = 24;
  private static final double MAD_TO_SIGMA = 1.4826;

  private final FilmSeries series;
  private final double[][] z;
  private final double[][] off;

  ShortLook(FilmSeries series) {
    this.series = series;
    this.off = new double[series.size()][series.layers];
    this.z = new double[series.size()][series.layers];
    for (int i = 0; i < series.layers; i++) {
      standardise(i);
    }
  }

  /** Samples from one to before another, off in a layer that is the clearest. */
  record Disturbance(int from, int end, int layer, double z, double part) {}

  private void standardise(int layer) {
    double[] sizes = new double[series.size()];
    for (int t = 0; t < sizes.length; t++) {
      off[t][layer] = series.level[t][layer] - median(around(t, t + 1, layer));
      sizes[t] = Math.abs(off[t][layer]);
    }
    double sigma = Math.max(1e-9, MAD_TO_SIGMA * median(sizes));
    for (int t = 0; t < sizes.length; t++) {
      z[t][layer] = off[t][layer] / sigma;
    }
  }

  private double[] around(int from, int end, int layer) {
    double[] before = span(from - REACH, from, layer);
    double[] after = span(end, end + REACH, layer);
    double[] both = Arrays.copyOf(before, before.length + after.length);
    System.arraycopy(after, 0, both, before.length, after.length);
    return both;
  }

  private double[] span(int from, int end, int layer) {
    int first = Math.max(0, from);
    int last = Math.min(series.size(), end);
    double[] values = new double[Math.max(0, last - first)];
    for (int t = first; t < last; t++) {
      values[t - first] = series.level[t][layer];
    }
    return values;
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    return n == 0 ? 0 : (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
  }

  Optional<Disturbance> clearest() {
    Disturbance best = null;
    for (int from = Math.max(REACH, series.alarm - OLDEST); from <= series.alarm; from++) {
      for (int i = 0; i < series.layers; i++) {
        for (int end = from + 1; end <= from + LONGEST; end++) {
          if (isDisturbance(from, end, i) && (best == null || size(from, end, i) > best.z())) {
            best = new Disturbance(from, end, i, size(from, end, i), part(from, end, i));
          }
        }
      }
    }
    return Optional.ofNullable(best);
  }

  private boolean isDisturbance(int from, int end, int layer) {
    if (end + FEWEST_AFTER > series.size()) {
      return false;
    }
    double least = ALSO_OFF;
    for (int t = from; t < end; t++) {
      if (Math.abs(z[t][layer]) < least || z[t][layer] * z[from][layer] < 0) {
        return false;
      }
    }
    double sigma = Math.abs(off[from][layer] / z[from][layer]);
    double back = median(span(from - REACH, from, layer)) - median(span(end, end + REACH, layer));
    return Math.abs(back) < 2.5 * sigma
        && Math.abs(z[from - 1][layer]) < AS_USUAL
        && Math.abs(z[end][layer]) < AS_USUAL
        && Math.abs(z[end + 1][layer]) < AS_USUAL;
  }

  private double size(int from, int end, int layer) {
    double most = 0;
    for (int t = from; t < end; t++) {
      most = Math.max(most, Math.abs(z[t][layer]));
    }
    return most;
  }

  private double part(int from, int end, int layer) {
    double most = 0;
    for (int t = from; t < end; t++) {
      most = Math.abs(off[t][layer]) > Math.abs(most) ? off[t][layer] : most;
    }
    return most;
  }

  /** Looks, notes what there is, and says which samples to leave out of the other looks. */
  Optional<Disturbance> look(Findings findings, ToDoubleFunction<List<Integer>> blur) {
    Optional<Disturbance> found = clearest();
    if (found.isEmpty()) {
      findings.put(Statistic.SHORT_Z, 0);
      return found;
    }
    Disturbance is = found.get();
    double z = is.z() / blur.applyAsDouble(List.of(is.layer() + 1));
    findings.put(Statistic.SHORT_Z, z, List.of(is.layer() + 1));
    if (z < CLEAR) {
      return Optional.empty();
    }
    List<Integer> positions = new ArrayList<>();
    for (int i = 0; i < series.layers; i++) {
      if (size(is.from(), is.end(), i) >= ALSO_OFF) {
        positions.add(i + 1);
      }
    }
    findings.put(Statistic.SHORT_Z, z, positions);
    findings.put(Statistic.SHORT_SAMPLES, is.end() - is.from());
    findings.put(Statistic.SHORT_PERCENT, 100 * is.part(), List.of(is.layer() + 1));
    findings.put(Statistic.SHORT_LAYERS, (double) positions.size() / series.layers, positions);
    TurnedOver.note(findings, series.usualUm, series.level[is.from()]);
    findings.put(Statistic.SHORT_RECOVERED, series.size() - is.end());
    return found;
  }
}
