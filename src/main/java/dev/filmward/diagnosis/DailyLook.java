package dev.filmward.diagnosis;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * Looks for a wave of 24 hours that layers have in step. In a gauge whose velocities are set once a
 * warmer sample reads thicker, each material by its own coefficient.
 *
 * <p>Coefficients from memory, in % a kelvin: polyethylene and its ties 0.4, polypropylene 0.5,
 * polyamide and EVOH 0.15; they only tell materials apart.
 */
final class DailyLook {
  /** In-control weeks have none so clear; see {@code DiagnosisProofTest}. */
  static final double CLEAR = 5;

  private static final double MINUTES = 24 * 60;
  private static final double FEWEST_DAYS = 1.75;
  private static final double LAYER_CLEAR = 3;

  private final FilmSeries series;
  private final double[][] level;
  private final double[] minutes;

  DailyLook(FilmSeries series, double[][] level, double[] minutes) {
    this.series = series;
    this.level = level;
    this.minutes = minutes;
  }

  boolean canLook() {
    return minutes.length >= 40
        && minutes[minutes.length - 1] - minutes[0] >= FEWEST_DAYS * MINUTES;
  }

  /** Amplitudes of cosine and sine by layer, and what they are worth. */
  static final class Wave {
    final double[] cosine;
    final double[] sine;
    final double z;

    Wave(double[] cosine, double[] sine, double z) {
      this.cosine = cosine;
      this.sine = sine;
      this.z = z;
    }
  }

  private double[] wave(double shift) {
    return IntStream.range(0, minutes.length)
        .mapToDouble(t -> Math.cos(2 * Math.PI * minutes[t] / MINUTES - shift))
        .toArray();
  }

  Wave look(Findings findings) {
    LevelScan scan = new LevelScan(level, minutes, 0, List.of());
    UsualNoise noise = UsualNoise.of(scan.withoutWave(wave(0), wave(Math.PI / 2)));
    Whitened white = new Whitened(level, minutes, noise.phi);
    Whitened.Fit cosine = white.fit(wave(0));
    Whitened.Fit sine = white.fit(wave(Math.PI / 2));
    double best = 0;
    for (double[] moves : List.of(ones(), coefficients())) {
      double[] weighed = noise.weighed(moves);
      double c = LevelScan.dot(weighed, cosine.coefficients());
      double s = LevelScan.dot(weighed, sine.coefficients());
      double size = LevelScan.dot(weighed, moves);
      best = Math.max(best, (c * c * cosine.information() + s * s * sine.information()) / size);
    }
    Wave wave = new Wave(cosine.coefficients(), sine.coefficients(), Math.sqrt(best));
    findings.put(Statistic.DAILY_Z, wave.z);
    if (wave.z >= CLEAR) {
      note(findings, wave, noise, cosine.information());
    }
    return wave;
  }

  private void note(Findings findings, Wave wave, UsualNoise noise, double information) {
    double[] weighed = noise.weighed(ones());
    double phase =
        Math.atan2(LevelScan.dot(weighed, wave.sine), LevelScan.dot(weighed, wave.cosine));
    double[] inStep = new double[series.layers];
    List<Integer> positions = new ArrayList<>();
    for (int i = 0; i < inStep.length; i++) {
      inStep[i] = wave.cosine[i] * Math.cos(phase) + wave.sine[i] * Math.sin(phase);
      if (inStep[i] > LAYER_CLEAR * Math.sqrt(noise.covariance[i][i] / information)) {
        positions.add(i + 1);
      }
    }
    findings.put(Statistic.DAILY_Z, wave.z, positions);
    findings.put(Statistic.DAILY_LAYERS, (double) positions.size() / series.layers, positions);
    double[] material = coefficients();
    double[] solved = noise.weighed(inStep);
    double all = LevelScan.dot(inStep, solved) * information;
    double along = LevelScan.dot(material, solved);
    double gain = along * along / LevelScan.dot(material, noise.weighed(material)) * information;
    double rest = Math.max(0, all - gain - (series.layers - 1));
    findings.put(
        Statistic.DAILY_MATERIAL_EXPLAINED,
        Math.max(0, Math.min(1, 1 - rest / Math.max(1, all - series.layers))));
  }

  private double[] ones() {
    return IntStream.range(0, series.layers).mapToDouble(i -> 1).toArray();
  }

  private double[] coefficients() {
    return series.structure.reported().stream().mapToDouble(DailyLook::coefficient).toArray();
  }

  private static double coefficient(ReportedLayer layer) {
    double all = 0;
    double sum = 0;
    for (Layer member : layer.members()) {
      double um = member.individual().target().orElse(1);
      all += um;
      sum += um * coefficient(member.resin().orElse("PE"));
    }
    return sum / all;
  }

  private static double coefficient(String resin) {
    String word = resin.toUpperCase(Locale.ROOT);
    if (word.contains("PA6") || word.startsWith("PA") || word.contains("EVOH")) {
      return 0.15;
    }
    return word.startsWith("PP") ? 0.5 : 0.4;
  }

  /** The series without the wave. */
  double[][] without(Wave wave) {
    double[][] rest = new double[level.length][];
    double[] cosine = wave(0);
    double[] sine = wave(Math.PI / 2);
    for (int t = 0; t < rest.length; t++) {
      rest[t] = level[t].clone();
      for (int i = 0; i < rest[t].length; i++) {
        rest[t][i] -= wave.cosine[i] * cosine[t] + wave.sine[i] * sine[t];
      }
    }
    return rest;
  }
}
