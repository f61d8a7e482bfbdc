package dev.filmward.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Looks for a change of the profile across the web: what all layers share, and what a layer has for
 * itself, before and after every sample. A lane is compared with the mean of its own sample, so
 * that levels do not matter.
 *
 * <p>Source: sums of squares of lane effects as in the analysis of variance; their normal
 * equivalents after E. B. Wilson and M. M. Hilferty, The distribution of chi-square, Proceedings of
 * the National Academy of Sciences 17 (1931) 684.
 */
final class LanesLook {
  /** In-control weeks have none so clear; see {@code DiagnosisProofTest}. */
  static final double CLEAR = 4.8;

  private static final int FEWEST_BEFORE = 15;
  private static final int FEWEST_AFTER = 3;
  private static final double LANE_CLEAR = 3;

  private final FilmSeries series;
  private final int[] kept;
  private final int last;
  private final int layers;
  private final int lanes;

  /** By sample, layer and lane; missing ones are as usual. */
  private final double[][][] off;

  private final double[] weights;
  private final double inflation;

  /**
   * @param kept indices of the samples that are looked at
   * @param last the latest place among them where the profile may have changed
   */
  LanesLook(FilmSeries series, int[] kept, int last) {
    this.series = series;
    this.kept = kept;
    this.last = last;
    this.layers = series.layers;
    this.lanes = series.lanes();
    this.off = new double[kept.length][layers][lanes];
    this.weights = new double[layers];
    for (int t = 0; t < kept.length; t++) {
      for (int i = 0; i < layers; i++) {
        for (int j = 0; j < lanes; j++) {
          double value = series.lane[kept[t]][i][j];
          off[t][i][j] = Double.isNaN(value) ? 0 : value;
        }
      }
    }
    for (int i = 0; i < layers; i++) {
      weights[i] = 1 / Math.max(1e-12, variance(i));
    }
    this.inflation = inflation();
  }

  /** From differences of neighbours, so that a change of the profile does not matter. */
  private double variance(int layer) {
    double sum = 0;
    for (int t = 1; t < off.length; t++) {
      for (int j = 0; j < lanes; j++) {
        double step = off[t][layer][j] - off[t - 1][layer][j];
        sum += step * step / 2;
      }
    }
    return sum / (off.length - 1) / (lanes - 1);
  }

  /** How much wider means vary because neighbouring samples are alike. */
  private double inflation() {
    double squares = 0;
    double products = 0;
    for (int i = 0; i < layers; i++) {
      for (int j = 0; j < lanes; j++) {
        double[] mean = new double[2];
        int half = off.length / 2;
        for (int t = 0; t < off.length; t++) {
          mean[t < half ? 0 : 1] += off[t][i][j] / (t < half ? half : off.length - half);
        }
        for (int t = 1; t < off.length; t++) {
          double here = off[t][i][j] - mean[t < half ? 0 : 1];
          squares += weights[i] * here * here;
          products += weights[i] * here * (off[t - 1][i][j] - mean[t - 1 < half ? 0 : 1]);
        }
      }
    }
    double phi = squares == 0 ? 0 : Math.max(0, Math.min(0.9, products / squares));
    return phi < 0.1 ? 1 : (1 + phi) / (1 - phi);
  }

  boolean canLook() {
    return lanes >= 3 && kept.length >= FEWEST_BEFORE + FEWEST_AFTER && last >= FEWEST_BEFORE;
  }

  /** A series of profiles: what is looked for in it. */
  private interface Part {
    double of(int sample, int lane);
  }

  private double common(int t, int j) {
    double sum = 0;
    double all = 0;
    for (int i = 0; i < layers; i++) {
      sum += weights[i] * off[t][i][j];
      all += weights[i];
    }
    return sum / all;
  }

  private double total(int t, int j) {
    double sum = 0;
    for (int i = 0; i < layers; i++) {
      sum += series.usualUm[i] * off[t][i][j];
    }
    return sum / series.totalUm();
  }

  private double own(int t, int i, int j) {
    return off[t][i][j] - common(t, j);
  }

  /**
   * Where the profile changed most clearly.
   *
   * @param position of the layer whose own it is; 0 for the one that all share
   */
  record Place(int from, int position, double z) {
    List<Integer> positions() {
      return position == 0 ? List.of() : List.of(position);
    }
  }

  /** z at every place from the first that is allowed. */
  private double[] scan(Part part) {
    double[][] values = new double[off.length][lanes];
    double spread = 0;
    for (int t = 0; t < off.length; t++) {
      for (int j = 0; j < lanes; j++) {
        values[t][j] = part.of(t, j);
        if (t > 0) {
          double step = values[t][j] - values[t - 1][j];
          spread += step * step / 2;
        }
      }
    }
    double variance = Math.max(1e-14, spread / (off.length - 1) / (lanes - 1)) * inflation;
    double[] all = new double[lanes];
    double[] before = new double[lanes];
    for (double[] row : values) {
      for (int j = 0; j < lanes; j++) {
        all[j] += row[j];
      }
    }
    double[] z = new double[off.length];
    for (int from = 1; from < off.length; from++) {
      double squares = 0;
      double one = from;
      double two = off.length - from;
      for (int j = 0; j < lanes; j++) {
        before[j] += values[from - 1][j];
        double change = (all[j] - before[j]) / two - before[j] / one;
        squares += change * change;
      }
      z[from] = normal(squares / (variance * (1 / one + 1 / two)), lanes - 1);
    }
    return z;
  }

  /** The normal deviate as improbable as a chi-square. */
  static double normal(double chiSquare, double degrees) {
    double spread = 2 / (9 * degrees);
    return (Math.cbrt(chiSquare / degrees) - (1 - spread)) / Math.sqrt(spread);
  }

  /** Where a profile changed most clearly, of all layers or of one; empty where nobody can tell. */
  Optional<Place> clearest() {
    if (!canLook()) {
      return Optional.empty();
    }
    double[][] scans = new double[layers + 1][];
    scans[layers] = scan(this::common);
    for (int i = 0; i < layers; i++) {
      int layer = i;
      scans[i] = scan((t, j) -> own(t, layer, j));
    }
    Place best = new Place(0, 0, Double.NEGATIVE_INFINITY);
    for (int from = FEWEST_BEFORE; from <= Math.min(last, off.length - FEWEST_AFTER); from++) {
      for (int i = 0; i <= layers; i++) {
        best =
            scans[i][from] > best.z()
                ? new Place(from, (i + 1) % (layers + 1), scans[i][from])
                : best;
      }
    }
    return Double.isFinite(best.z()) ? Optional.of(best) : Optional.empty();
  }

  /** Notes what there is. */
  void note(Place best, Findings findings) {
    new ProfileChange(change(best.from()), weights, scale(best.from())).note(findings, series);
    findings.put(Statistic.LANES_TOTAL_Z, scan(this::total)[best.from()]);
  }

  /** By layer and lane: mean after less mean before. */
  double[][] change(int from) {
    double[][] change = new double[layers][lanes];
    for (int t = 0; t < off.length; t++) {
      for (int i = 0; i < layers; i++) {
        for (int j = 0; j < lanes; j++) {
          change[i][j] += t < from ? -off[t][i][j] / from : off[t][i][j] / (off.length - from);
        }
      }
    }
    return change;
  }

  private double scale(int from) {
    return inflation * (1.0 / from + 1.0 / (off.length - from));
  }

  /** Lanes, as the gauge numbers them, that stand out of a profile with that standard error. */
  static List<Integer> standingOut(double[] profile, double error, int[] numbers) {
    List<Integer> lanes = new ArrayList<>();
    double most = 0;
    for (double value : profile) {
      most = Math.max(most, Math.abs(value));
    }
    for (int j = 0; j < profile.length; j++) {
      if (Math.abs(profile[j]) >= Math.max(LANE_CLEAR * error, most / 2)) {
        lanes.add(numbers[j]);
      }
    }
    return lanes;
  }
}
