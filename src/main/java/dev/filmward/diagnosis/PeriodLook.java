package dev.filmward.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Looks for a layer that swings at an even pace: the highest peak of the Lomb-Scargle periodogram
 * over all layers, over the whole history and over its latest half and quarter, of periods from
 * twice the usual interval to a quarter of the span. What is faster shows, if at all, under a
 * period that it does not have.
 *
 * <p>Source: J. D. Scargle, Studies in astronomical time series analysis II, Astrophysical Journal
 * 263 (1982) 835; M. Zechmeister and M. Kurster, The generalised Lomb-Scargle periodogram,
 * Astronomy and Astrophysics 496 (2009) 577, for the probability of a peak normalised by the
 * series' own variance.
 */
final class PeriodLook {
  /** In-control weeks have none so improbable; see {@code DiagnosisProofTest}. */
  static final double CLEAR = 1e-4;

  private static final int FEWEST = 40;
  private static final int PARTS = 3;
  private static final int OVERSAMPLING = 3;

  private final double[][] level;
  private final double[] minutes;

  /** By sample and layer, without what is known to be a change of level. */
  PeriodLook(double[][] level, double[] minutes) {
    this.level = level;
    this.minutes = minutes;
  }

  /**
   * A peak.
   *
   * @param from index of the first sample of the part of the history that it is in
   */
  record Peak(int layer, double periodMinutes, double falseAlarm, int from) {}

  Peak highest() {
    Peak best = new Peak(0, 0, 1, 0);
    int n = minutes.length;
    for (int part = 0; part < PARTS; part++) {
      int from = n - n / (1 << part);
      if (n - from >= FEWEST) {
        Peak peak = highest(from);
        best = peak.falseAlarm() < best.falseAlarm() ? peak : best;
      }
    }
    return best;
  }

  private Peak highest(int from) {
    double[][] series = new double[level[0].length][];
    for (int i = 0; i < series.length; i++) {
      series[i] = centred(i, from);
    }
    double[] frequencies = highest(series, from).frequencies();
    for (int i = 0; i < series.length; i++) {
      series[i] = whitened(series[i], from, frequencies[i]);
    }
    return peak(highest(series, from), from);
  }

  /** For each series where its periodogram is highest, and which part of its squares that is. */
  private static final class Tops {
    private final double[] frequencies;
    private final double[] parts;

    Tops(int count) {
      frequencies = new double[count];
      parts = new double[count];
    }

    double[] frequencies() {
      return frequencies;
    }
  }

  private Tops highest(double[][] series, int from) {
    int n = minutes.length - from;
    double[] squares = Arrays.stream(series).mapToDouble(one -> LevelScan.dot(one, one)).toArray();
    double span = minutes[minutes.length - 1] - minutes[from];
    Tops tops = new Tops(series.length);
    for (int k = 4 * OVERSAMPLING; k <= OVERSAMPLING * n / 2; k++) {
      double trial = k / (OVERSAMPLING * span);
      double[] powers = powers(series, from, trial);
      for (int i = 0; i < series.length; i++) {
        if (squares[i] > 0 && powers[i] / squares[i] > tops.parts[i]) {
          tops.parts[i] = powers[i] / squares[i];
          tops.frequencies[i] = trial;
        }
      }
    }
    return tops;
  }

  private Peak peak(Tops tops, int from) {
    int n = minutes.length - from;
    int layer = 0;
    for (int i = 0; i < tops.parts.length; i++) {
      layer = tops.parts[i] > tops.parts[layer] ? i : layer;
    }
    double one = Math.pow(Math.max(0, 1 - tops.parts[layer]), (n - 3) / 2.0);
    double trials = (double) PARTS * tops.parts.length * n;
    double falseAlarm = one > 1e-9 ? -Math.expm1(trials * Math.log1p(-one)) : trials * one;
    double frequency = tops.frequencies[layer];
    return new Peak(layer, frequency == 0 ? 0 : 1 / frequency, falseAlarm, from);
  }

  /** Sums of squares that a sine of a frequency takes off each series. */
  private double[] powers(double[][] series, int from, double frequency) {
    int n = series[0].length;
    double cc = 0;
    double cs = 0;
    double[] c = new double[series.length];
    double[] s = new double[series.length];
    Turn turn = new Turn(2 * Math.PI * frequency);
    for (int t = 0; t < n; t++) {
      turn.by(t == 0 ? 0 : minutes[from + t] - minutes[from + t - 1]);
      double cos = turn.cos;
      double sin = turn.sin;
      cc += cos * cos;
      cs += cos * sin;
      for (int i = 0; i < series.length; i++) {
        c[i] += series[i][t] * cos;
        s[i] += series[i][t] * sin;
      }
    }
    double ss = n - cc;
    double determinant = cc * ss - cs * cs;
    double[] powers = new double[series.length];
    for (int i = 0; i < powers.length; i++) {
      powers[i] =
          determinant < 1e-6 * n * n
              ? 0
              : (ss * c[i] * c[i] - 2 * cs * c[i] * s[i] + cc * s[i] * s[i]) / determinant;
    }
    return powers;
  }

  /** Cosine and sine of an angle that grows; equal steps are computed once. */
  private static final class Turn {
    private final double perMinute;
    private double cos = 1;
    private double sin;
    private double step = Double.NaN;
    private double stepCos;
    private double stepSin;

    Turn(double perMinute) {
      this.perMinute = perMinute;
    }

    void by(double minutes) {
      if (minutes != step) {
        step = minutes;
        stepCos = Math.cos(perMinute * minutes);
        stepSin = Math.sin(perMinute * minutes);
      }
      double before = cos;
      cos = before * stepCos - sin * stepSin;
      sin = sin * stepCos + before * stepSin;
    }
  }

  private double[] centred(int layer, int from) {
    double[] values = new double[minutes.length - from];
    double mean = 0;
    for (int t = 0; t < values.length; t++) {
      mean += level[from + t][layer] / values.length;
    }
    for (int t = 0; t < values.length; t++) {
      values[t] = level[from + t][layer] - mean;
    }
    return values;
  }

  /** Less what a value has of the one before it, apart from the swing of a frequency. */
  private double[] whitened(double[] values, int from, double frequency) {
    double[] rest = withoutSine(values, from, frequency);
    double squares = LevelScan.dot(rest, rest);
    double products = 0;
    for (int t = 1; t < rest.length; t++) {
      products += rest[t] * rest[t - 1];
    }
    double phi = squares == 0 ? 0 : Math.max(0, Math.min(0.9, products / squares));
    double[] white = new double[values.length];
    white[0] = values[0] * Math.sqrt(1 - phi * phi);
    for (int t = 1; t < white.length; t++) {
      white[t] = values[t] - phi * values[t - 1];
    }
    double mean = Arrays.stream(white).sum() / white.length;
    return Arrays.stream(white).map(x -> x - mean).toArray();
  }

  private double[] withoutSine(double[] values, int from, double frequency) {
    double[] cosine = new double[values.length];
    double[] sine = new double[values.length];
    for (int t = 0; t < values.length; t++) {
      double angle = 2 * Math.PI * frequency * minutes[from + t];
      cosine[t] = Math.cos(angle);
      sine[t] = Math.sin(angle);
    }
    double cs = LevelScan.dot(cosine, sine);
    double cc = LevelScan.dot(cosine, cosine);
    double ss = LevelScan.dot(sine, sine);
    double determinant = Math.max(1e-9, cc * ss - cs * cs);
    double c = LevelScan.dot(values, cosine);
    double s = LevelScan.dot(values, sine);
    double[] rest = values.clone();
    for (int t = 0; t < rest.length; t++) {
      rest[t] -= (ss * c - cs * s) / determinant * cosine[t];
      rest[t] -= (cc * s - cs * c) / determinant * sine[t];
    }
    return rest;
  }

  /** Sine and cosine of a layer from a sample on: index, what they explain, amplitude. */
  record Swing(int from, double gain, double amplitude, double cosine, double sine) {}

  /** What a peak's swing explains, in the variance of the rest. */
  double gain(Peak peak) {
    Swing swing = swing(peak);
    double squares = 0;
    double mean = 0;
    for (double[] row : level) {
      mean += row[peak.layer()] / level.length;
    }
    for (double[] row : level) {
      squares += (row[peak.layer()] - mean) * (row[peak.layer()] - mean);
    }
    return swing.gain() / Math.max(1e-30, (squares - swing.gain()) / (level.length - 3));
  }

  /** From when on a layer swings with a period: the beginning that explains most. */
  Swing swing(Peak peak) {
    int layer = peak.layer();
    double periodMinutes = peak.periodMinutes();
    int n = minutes.length;
    double mean = 0;
    for (double[] row : level) {
      mean += row[layer] / n;
    }
    double cc = 0;
    double cs = 0;
    double ss = 0;
    double c = 0;
    double s = 0;
    Swing best = new Swing(0, -1, 0, 0, 0);
    for (int t = n - 1; t >= 0; t--) {
      double angle = 2 * Math.PI * minutes[t] / periodMinutes;
      cc += Math.cos(angle) * Math.cos(angle);
      cs += Math.cos(angle) * Math.sin(angle);
      ss += Math.sin(angle) * Math.sin(angle);
      c += (level[t][layer] - mean) * Math.cos(angle);
      s += (level[t][layer] - mean) * Math.sin(angle);
      double determinant = cc * ss - cs * cs;
      if (n - t >= 6 && determinant > 1e-3 * (n - t)) {
        double cosine = (ss * c - cs * s) / determinant;
        double sine = (cc * s - cs * c) / determinant;
        double gain = cosine * c + sine * s;
        if (gain > best.gain()) {
          best = new Swing(t, gain, Math.hypot(cosine, sine), cosine, sine);
        }
      }
    }
    return best;
  }

  /** The series without the swing in every layer. */
  double[][] without(double periodMinutes, int from) {
    double[][] rest = new double[level.length][];
    Swing[] swings = new Swing[level[0].length];
    for (int i = 0; i < swings.length; i++) {
      swings[i] =
          new PeriodLook(tail(from), Arrays.copyOfRange(minutes, from, minutes.length))
              .fitted(i, periodMinutes);
    }
    for (int t = 0; t < rest.length; t++) {
      rest[t] = level[t].clone();
      double angle = 2 * Math.PI * minutes[t] / periodMinutes;
      for (int i = 0; t >= from && i < swings.length; i++) {
        rest[t][i] -= swings[i].cosine() * Math.cos(angle) + swings[i].sine() * Math.sin(angle);
      }
    }
    return rest;
  }

  private double[][] tail(int from) {
    return Arrays.copyOfRange(level, from, level.length);
  }

  /** Over the whole series. */
  private Swing fitted(int layer, double periodMinutes) {
    int n = minutes.length;
    double mean = 0;
    for (double[] row : level) {
      mean += row[layer] / n;
    }
    double cc = 0;
    double cs = 0;
    double ss = 0;
    double c = 0;
    double s = 0;
    for (int t = 0; t < n; t++) {
      double angle = 2 * Math.PI * minutes[t] / periodMinutes;
      cc += Math.cos(angle) * Math.cos(angle);
      cs += Math.cos(angle) * Math.sin(angle);
      ss += Math.sin(angle) * Math.sin(angle);
      c += (level[t][layer] - mean) * Math.cos(angle);
      s += (level[t][layer] - mean) * Math.sin(angle);
    }
    double determinant = Math.max(1e-9, cc * ss - cs * cs);
    double cosine = (ss * c - cs * s) / determinant;
    double sine = (cc * s - cs * c) / determinant;
    return new Swing(0, cosine * c + sine * s, Math.hypot(cosine, sine), cosine, sine);
  }

  /** Layers, from 1, that swing with the period clearly: z of their own fit. */
  List<Integer> swinging(double periodMinutes, int from) {
    List<Integer> positions = new ArrayList<>();
    PeriodLook tail = new PeriodLook(tail(from), Arrays.copyOfRange(minutes, from, minutes.length));
    for (int i = 0; i < level[0].length; i++) {
      double mean = 0;
      double squares = 0;
      int n = level.length - from;
      for (int t = from; t < level.length; t++) {
        mean += level[t][i] / n;
      }
      for (int t = from; t < level.length; t++) {
        squares += (level[t][i] - mean) * (level[t][i] - mean);
      }
      double gain = tail.fitted(i, periodMinutes).gain();
      if (gain / Math.max(1e-30, (squares - gain) / Math.max(1, n - 3)) > 16) {
        positions.add(i + 1);
      }
    }
    return positions;
  }
}
