package dev.filmward.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Looks for a layer that swings at an even pace: the highest peak of the Lomb-Scargle periodogram
 * over all layers, over the whole history and over its latest half and quarter, of periods from
 * twice the usual interval to a quarter of the span. What is faster shows, if at all, under a
 * period that it does not have. Immutable.
 *
 * <p>Source: J. D. Scargle, Studies in astronomical time series analysis II, Astrophysical Journal
 * 263 (1982) 835; M. Zechmeister and M. Kurster, The generalised Lomb-Scargle periodogram,
 * Astronomy and Astrophysics 496 (2009) 577, for the probability of a peak normalised by the
 * series' own variance. Every sample counts for one frequency that is tried, which simulation shows
 * to be about right ({@code LooksTest}).
 */
final class PeriodLook {
  /** In-control weeks have none so improbable; see {@code DiagnosisProofTest}. */
  static final double CLEAR = 1e-4;

  private static final int FEWEST = 40;
  private static final int FEWEST_SWINGING = 6;
  private static final int PARTS = 3;
  private static final int FINER = 5;
  private static final double MOST_ALIKE = 0.9;

  /** Gain over variance from which a layer swings with another: four standard errors. */
  private static final double ALSO = 16;

  private final double[][] level;
  private final double[] minutes;

  /** By sample and layer, without what is known to be a change of level. */
  PeriodLook(double[][] level, double[] minutes) {
    this.level = level;
    this.minutes = minutes;
  }

  /** The highest peak; a period of 0 where there is none. */
  record Peak(int layer, double periodMinutes, double falseAlarm) {}

  Peak highest() {
    Peak best = new Peak(0, 0, 1);
    int n = minutes.length;
    for (int part = 0; part < PARTS; part++) {
      int from = n - n / (1 << part);
      if (n - from >= FEWEST) {
        Peak peak = highest(from);
        best = peak.falseAlarm() < best.falseAlarm() ? peak : best;
      }
    }
    return best.periodMinutes() > 0 ? refined(best) : best;
  }

  /** With the period between those tried that explains most. */
  private Peak refined(Peak peak) {
    double span = minutes[minutes.length - 1] - minutes[0];
    Peak best = peak;
    for (int step = -FINER; step <= FINER; step++) {
      double frequency = 1 / peak.periodMinutes() + 0.5 * step / (FINER * span);
      Peak other = new Peak(peak.layer(), 1 / frequency, peak.falseAlarm());
      if (swing(other).wave().gain() > swing(best).wave().gain()) {
        best = other;
      }
    }
    return best;
  }

  private Peak highest(int from) {
    double[] times = Arrays.copyOfRange(minutes, from, minutes.length);
    double[][] series = new double[level[0].length][];
    for (int i = 0; i < series.length; i++) {
      series[i] = centred(i, from);
    }
    Periodogram raw = new Periodogram(series, times);
    for (int i = 0; i < series.length; i++) {
      series[i] = whitened(series[i], times, raw.frequency(i));
    }
    Periodogram white = new Periodogram(series, times);
    int layer = white.highest();
    double one = Math.pow(Math.max(0, 1 - white.part(layer)), (times.length - 3) / 2.0);
    double trials = (double) PARTS * series.length * times.length;
    double falseAlarm = one > 1e-9 ? -Math.expm1(trials * Math.log1p(-one)) : trials * one;
    double frequency = white.frequency(layer);
    return new Peak(layer, frequency == 0 ? 0 : 1 / frequency, falseAlarm);
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
  private static double[] whitened(double[] values, double[] times, double frequency) {
    SineSums sums = new SineSums();
    for (int t = 0; t < values.length; t++) {
      sums.add(2 * Math.PI * frequency * times[t], values[t]);
    }
    SineSums.Fit fit = sums.fit();
    double squares = 0;
    double products = 0;
    double before = 0;
    for (int t = 0; t < values.length; t++) {
      double rest = values[t] - fit.at(2 * Math.PI * frequency * times[t]);
      squares += rest * rest;
      products += rest * before;
      before = rest;
    }
    double phi = squares == 0 ? 0 : Math.max(0, Math.min(MOST_ALIKE, products / squares));
    double[] white = new double[values.length];
    white[0] = values[0] * Math.sqrt(1 - phi * phi);
    for (int t = 1; t < white.length; t++) {
      white[t] = values[t] - phi * values[t - 1];
    }
    double mean = Arrays.stream(white).sum() / white.length;
    return Arrays.stream(white).map(x -> x - mean).toArray();
  }

  /** A layer's wave, and the index of the sample that it begins with. */
  record Swing(int from, SineSums.Fit wave) {}

  /** From when on a layer swings with a period: the beginning that explains most. */
  Swing swing(Peak peak) {
    double[] values = centred(peak.layer(), 0);
    SineSums sums = new SineSums();
    Swing best = new Swing(0, new SineSums.Fit(0, 0, 0));
    for (int t = values.length - 1; t >= 0; t--) {
      sums.add(angle(t, peak), values[t]);
      SineSums.Fit wave = sums.fit();
      if (values.length - t >= FEWEST_SWINGING && wave.gain() > best.wave().gain()) {
        best = new Swing(t, wave);
      }
    }
    return best;
  }

  private double angle(int sample, Peak peak) {
    return 2 * Math.PI * minutes[sample] / peak.periodMinutes();
  }

  /** What a peak's swing explains, in the variance of the rest. */
  double gain(Peak peak) {
    double[] values = centred(peak.layer(), 0);
    return inVariances(swing(peak).wave().gain(), values);
  }

  private static double inVariances(double gain, double[] values) {
    double rest = LevelScan.dot(values, values) - gain;
    return gain / Math.max(1e-30, rest / Math.max(1, values.length - 3));
  }

  /** A layer's wave with the period of a peak, from a sample on. */
  private SineSums.Fit wave(int layer, Peak peak, int from) {
    double[] values = centred(layer, from);
    SineSums sums = new SineSums();
    for (int t = 0; t < values.length; t++) {
      sums.add(angle(from + t, peak), values[t]);
    }
    return sums.fit();
  }

  /** The series without the swing in every layer. */
  double[][] without(Peak peak) {
    int from = swing(peak).from();
    double[][] rest = Arrays.stream(level).map(double[]::clone).toArray(double[][]::new);
    for (int i = 0; i < level[0].length; i++) {
      SineSums.Fit wave = wave(i, peak, from);
      for (int t = from; t < rest.length; t++) {
        rest[t][i] -= wave.at(angle(t, peak));
      }
    }
    return rest;
  }

  /** Layers, from 1, that swing with the period clearly. */
  List<Integer> swinging(Peak peak) {
    int from = swing(peak).from();
    List<Integer> positions = new ArrayList<>();
    for (int i = 0; i < level[0].length; i++) {
      if (inVariances(wave(i, peak, from).gain(), centred(i, from)) > ALSO) {
        positions.add(i + 1);
      }
    }
    return positions;
  }
}
