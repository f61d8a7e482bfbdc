package dev.filmward.diagnosis;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Looks for a layer whose lanes scatter more about their usual profile than before, by the
 * logarithms of the variances within samples, and how the scatter that was added hangs together
 * with that of a neighbour.
 *
 * <p>Source: M. S. Bartlett and D. G. Kendall, The statistical analysis of variance-heterogeneity
 * and the logarithmic transformation, Supplement to the Journal of the Royal Statistical Society 8
 * (1946) 128.
 */
final class ScatterLook {
  /** In-control weeks have none so clear; see {@code DiagnosisProofTest}. */
  static final double CLEAR = 5;

  private static final int FEWEST_BEFORE = 15;
  private static final int FEWEST_AFTER = 3;
  private static final double ALSO = 3.5;
  private static final double LEAST_OF_TRADE = 0.4;
  private static final double LEAST_VARIANCE = 1e-10;

  private final FilmSeries series;
  private final int[] kept;
  private final int last;
  private final int layers;
  private final double[][][] off;
  private final double[][] logs;

  /**
   * @param profileFrom where among the kept samples the profile changed; 0 for nowhere
   */
  ScatterLook(FilmSeries series, int[] kept, int last, int profileFrom) {
    this.series = series;
    this.kept = kept;
    this.last = last;
    this.layers = series.layers;
    this.off = new double[kept.length][layers][series.lanes()];
    this.logs = new double[kept.length][layers];
    for (int i = 0; i < layers; i++) {
      for (int j = 0; j < series.lanes(); j++) {
        centre(i, j, 0, profileFrom);
        centre(i, j, profileFrom, kept.length);
      }
      for (int t = 0; t < kept.length; t++) {
        logs[t][i] = Math.log(Math.max(LEAST_VARIANCE, variance(t, i)));
      }
    }
  }

  private void centre(int i, int j, int from, int end) {
    double sum = 0;
    int count = 0;
    for (int t = from; t < end; t++) {
      double value = series.lane[kept[t]][i][j];
      if (!Double.isNaN(value)) {
        sum += value;
        count++;
      }
    }
    for (int t = from; t < end; t++) {
      off[t][i][j] = series.lane[kept[t]][i][j] - (count == 0 ? 0 : sum / count);
    }
  }

  private double variance(int t, int i) {
    double squares = 0;
    int count = 0;
    for (double value : off[t][i]) {
      if (!Double.isNaN(value)) {
        squares += value * value;
        count++;
      }
    }
    return count < 2 ? LEAST_VARIANCE : squares / (count - 1);
  }

  boolean canLook() {
    return series.lanes() >= 3
        && kept.length >= FEWEST_BEFORE + FEWEST_AFTER
        && last >= FEWEST_BEFORE;
  }

  /** Where the scatter of a layer rose most clearly. */
  record Rise(int from, int layer, double z, double ratio, List<Integer> positions) {
    /** How much clearer something must be that is seen in layers which scatter more. */
    double blur(List<Integer> seenIn) {
      return seenIn.isEmpty() || Collections.disjoint(seenIn, positions) ? 1 : ratio;
    }
  }

  Optional<Rise> look(Findings findings) {
    if (!canLook()) {
      return Optional.empty();
    }
    double[][] scans = new double[layers][];
    int bestFrom = 0;
    int bestLayer = 0;
    double bestZ = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < layers; i++) {
      scans[i] = scan(i);
      for (int from = FEWEST_BEFORE; from <= Math.min(last, logs.length - FEWEST_AFTER); from++) {
        if (scans[i][from] > bestZ) {
          bestZ = scans[i][from];
          bestFrom = from;
          bestLayer = i;
        }
      }
    }
    if (!Double.isFinite(bestZ)) {
      return Optional.empty();
    }
    findings.put(Statistic.SCATTER_Z, bestZ, List.of(bestLayer + 1));
    if (bestZ < CLEAR) {
      return Optional.empty();
    }
    List<Integer> positions = new ArrayList<>();
    for (int i = 0; i < layers; i++) {
      if (scans[i][bestFrom] >= ALSO) {
        positions.add(i + 1);
      }
    }
    double ratio =
        Math.sqrt(
            product(bestFrom, logs.length, bestLayer, bestLayer)
                / product(0, bestFrom, bestLayer, bestLayer));
    Rise rise = new Rise(bestFrom, bestLayer, bestZ, Math.max(1, ratio), positions);
    note(findings, rise);
    return Optional.of(rise);
  }

  /** z at every place; of the logarithms, whose spread is that of neighbours' differences. */
  private double[] scan(int layer) {
    int n = logs.length;
    double spread = 0;
    double all = 0;
    for (int t = 0; t < n; t++) {
      all += logs[t][layer];
      if (t > 0) {
        double step = logs[t][layer] - logs[t - 1][layer];
        spread += step * step / (2 * (n - 1));
      }
    }
    double[] z = new double[n];
    double before = 0;
    for (int from = 1; from < n; from++) {
      before += logs[from - 1][layer];
      double change = (all - before) / (n - from) - before / from;
      z[from] =
          change / Math.sqrt(Math.max(LEAST_VARIANCE, spread) * (1.0 / from + 1.0 / (n - from)));
    }
    return z;
  }

  private void note(Findings findings, Rise rise) {
    List<Integer> positions = rise.positions();
    int layer = rise.layer();
    findings.put(Statistic.SCATTER_Z, rise.z(), positions);
    findings.put(Statistic.SCATTER_RATIO, rise.ratio(), List.of(layer + 1));
    findings.put(Statistic.SCATTER_LAYERS, (double) positions.size() / layers, positions);
    findings.put(Statistic.SCATTER_POSITION, layer + 1, List.of(layer + 1));
    findings.put(Statistic.SCATTER_SKEW, skew(rise), List.of(layer + 1));
    noteTrade(findings, rise);
  }

  /** With the neighbour whose added scatter goes most against that of the layer. */
  private void noteTrade(Findings findings, Rise rise) {
    int layer = rise.layer();
    double least = Double.POSITIVE_INFINITY;
    int other = -1;
    for (int k : new int[] {layer - 1, layer + 1}) {
      if (k >= 0 && k < layers && correlation(rise.from(), layer, k) < least) {
        least = correlation(rise.from(), layer, k);
        other = k;
      }
    }
    if (other < 0) {
      return;
    }
    List<Integer> pair = List.of(Math.min(layer, other) + 1, Math.max(layer, other) + 1);
    findings.put(Statistic.SCATTER_TRADE, least, pair);
    double a = Directions.slowness(series.structure.reported().get(layer)).orElse(Double.NaN);
    double b = Directions.slowness(series.structure.reported().get(other)).orElse(Double.NaN);
    double left = timeLeft(rise.from(), layer, other, a, b);
    if (Double.isFinite(left)) {
      findings.put(Statistic.SCATTER_TRADE_TIME_OF_FLIGHT, left, pair);
    }
  }

  private double added(int from, int i, int k) {
    return product(from, logs.length, i, k) - product(0, from, i, k);
  }

  /**
   * Of the added scatter of a layer and its neighbour; at most 1 either way. The neighbour's is
   * taken for at least a part of what it would be if they traded the same thickness.
   */
  private double correlation(int from, int i, int k) {
    double own = Math.max(1e-12, added(from, i, i));
    double ratio = series.usualUm[i] / series.usualUm[k];
    double other = Math.max(LEAST_OF_TRADE * own * ratio * ratio, added(from, k, k));
    return Math.max(-1, Math.min(1, added(from, i, k) / Math.sqrt(own * other)));
  }

  private double timeLeft(int from, int i, int k, double nsI, double nsK) {
    double a = nsI * series.usualUm[i];
    double b = nsK * series.usualUm[k];
    double alone = a * a * added(from, i, i) + b * b * added(from, k, k);
    double together = alone + 2 * a * b * added(from, i, k);
    return Math.max(0, together / alone);
  }

  /** Mean product of two layers' readings about their profiles. */
  private double product(int from, int end, int i, int k) {
    double sum = 0;
    int count = 0;
    for (int t = from; t < end; t++) {
      for (int j = 0; j < series.lanes(); j++) {
        double product = off[t][i][j] * off[t][k][j];
        if (!Double.isNaN(product)) {
          sum += product;
          count++;
        }
      }
    }
    return sum / Math.max(1, count);
  }

  private double skew(Rise rise) {
    double cubes = 0;
    int count = 0;
    for (int t = rise.from(); t < logs.length; t++) {
      for (double value : off[t][rise.layer()]) {
        if (!Double.isNaN(value)) {
          cubes += value * value * value;
          count++;
        }
      }
    }
    double variance = product(rise.from(), logs.length, rise.layer(), rise.layer());
    return cubes / Math.max(1, count) / Math.pow(variance, 1.5);
  }
}
