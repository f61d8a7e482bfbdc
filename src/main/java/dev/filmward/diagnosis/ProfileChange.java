package dev.filmward.diagnosis;

import java.util.List;
import java.util.stream.IntStream;

/**
 * A change of the profile in every layer, and how much of it the ways account for in which profiles
 * change: all layers alike, one layer with the others filling up, two neighbours curving against
 * each other. Immutable.
 */
final class ProfileChange {
  private final double[][] change;
  private final double[] weights;
  private final double scale;
  private final int layers;
  private final int lanes;

  /**
   * @param change by layer and lane, as fractions
   * @param weights one over the variance of a reading of each layer
   * @param scale by which the variance of the change is smaller than that of a reading
   */
  ProfileChange(double[][] change, double[] weights, double scale) {
    this.change = change;
    this.weights = weights;
    this.scale = scale;
    this.layers = change.length;
    this.lanes = change[0].length;
  }

  private double squares() {
    double sum = 0;
    for (int i = 0; i < layers; i++) {
      for (int j = 0; j < lanes; j++) {
        sum += weights[i] / scale * change[i][j] * change[i][j];
      }
    }
    return sum;
  }

  /** The profile that layers moving so would have in common, where a layer moves by 1. */
  private double[] along(double[] moves) {
    double[] profile = new double[lanes];
    double all = 0;
    for (int i = 0; i < layers; i++) {
      all += weights[i] * moves[i] * moves[i];
      for (int j = 0; j < lanes; j++) {
        profile[j] += weights[i] * moves[i] * change[i][j];
      }
    }
    for (int j = 0; j < lanes; j++) {
      profile[j] /= all;
    }
    return profile;
  }

  private double gain(double[] moves) {
    double[] profile = along(moves);
    double gain = 0;
    for (int i = 0; i < layers; i++) {
      for (int j = 0; j < lanes; j++) {
        gain += weights[i] / scale * moves[i] * moves[i] * profile[j] * profile[j];
      }
    }
    return gain;
  }

  /** With what chance leaves taken off. */
  private double explained(double gain, int parameters) {
    double degrees = layers * (lanes - 1.0);
    double rest = squares() - gain - (degrees - parameters);
    return Math.max(0, Math.min(1, 1 - Math.max(0, rest) / Math.max(1, squares() - degrees)));
  }

  private double[] ones() {
    return IntStream.range(0, layers).mapToDouble(i -> 1).toArray();
  }

  /** One layer, and all others fill up what it lacks. */
  private double[] filled(FilmSeries series, int layer) {
    double part = series.usualUm[layer] / series.totalUm();
    double[] moves = new double[layers];
    for (int i = 0; i < layers; i++) {
      moves[i] = i == layer ? 1 : -part / (1 - part);
    }
    return moves;
  }

  private double[] alone(int layer) {
    double[] moves = new double[layers];
    moves[layer] = 1;
    return moves;
  }

  /** Two neighbours that trade, layer and the next. */
  private double[] traded(FilmSeries series, int layer) {
    double[] moves = new double[layers];
    moves[layer] = 1 / series.usualUm[layer];
    moves[layer + 1] = -1 / series.usualUm[layer + 1];
    return moves;
  }

  /** Highest in the middle, of mean 0. */
  private double[] curve() {
    double[] curve = new double[lanes];
    double mean = 0;
    for (int j = 0; j < lanes; j++) {
      double place = 2.0 * j / (lanes - 1) - 1;
      curve[j] = 1 - place * place;
      mean += curve[j] / lanes;
    }
    for (int j = 0; j < lanes; j++) {
      curve[j] -= mean;
    }
    return curve;
  }

  private double curveGain(double[] moves) {
    double[] profile = along(moves);
    double[] curve = curve();
    double size = LevelScan.dot(curve, curve);
    double part = LevelScan.dot(profile, curve) / size;
    double all = 0;
    for (int i = 0; i < layers; i++) {
      all += weights[i] / scale * moves[i] * moves[i];
    }
    return part * part * size * all;
  }

  void note(Findings findings, FilmSeries series) {
    double common = explained(gain(ones()), lanes - 1);
    findings.put(Statistic.LANES_COMMON_EXPLAINED, common, List.of(), lanesOf(series, ones()));
    double best = -1;
    double[] bestMoves = ones();
    int bestLayer = 0;
    for (int i = 0; i < layers; i++) {
      for (double[] moves : List.of(alone(i), filled(series, i))) {
        if (gain(moves) > best) {
          best = gain(moves);
          bestLayer = i;
          bestMoves = moves;
        }
      }
    }
    findings.put(
        Statistic.LANES_ONE_LAYER_EXPLAINED,
        explained(best, lanes - 1),
        List.of(bestLayer + 1),
        lanesOf(series, bestMoves));
    findings.put(Statistic.LANES_ALIKE, alike());
    noteCurvature(findings, series);
  }

  private List<Integer> lanesOf(FilmSeries series, double[] moves) {
    double all = 0;
    for (int i = 0; i < layers; i++) {
      all += weights[i] * moves[i] * moves[i];
    }
    return LanesLook.standingOut(along(moves), Math.sqrt(scale / all), series.laneNumbers);
  }

  private void noteCurvature(Findings findings, FilmSeries series) {
    if (layers < 2) {
      return;
    }
    double best = -1;
    int pair = 0;
    for (int i = 0; i + 1 < layers; i++) {
      double gain = curveGain(traded(series, i));
      if (gain > best) {
        best = gain;
        pair = i;
      }
    }
    List<Integer> positions = List.of(pair + 1, pair + 2);
    findings.put(Statistic.CURVATURE_EXPLAINED, explained(best, 1), positions);
    double upper = curvature(pair);
    double lower = curvature(pair + 1);
    double opposed = upper * lower < 0 ? Math.min(Math.abs(upper), Math.abs(lower)) : 0;
    findings.put(Statistic.CURVATURE_OPPOSED_Z, opposed, positions);
  }

  /** In standard errors. */
  private double curvature(int layer) {
    double[] curve = curve();
    double part = LevelScan.dot(change[layer], curve);
    return part / Math.sqrt(LevelScan.dot(curve, curve) * scale / weights[layer]);
  }

  /** Mean correlation of the profiles of two layers. */
  private double alike() {
    double sum = 0;
    int pairs = 0;
    for (int i = 0; i < layers; i++) {
      for (int k = 0; k < i; k++) {
        double size = LevelScan.dot(change[i], change[i]) * LevelScan.dot(change[k], change[k]);
        sum += size == 0 ? 0 : LevelScan.dot(change[i], change[k]) / Math.sqrt(size);
        pairs++;
      }
    }
    return pairs == 0 ? 1 : sum / pairs;
  }
}
