package dev.filmward.drift;

import java.time.Duration;
import java.time.Instant;
import java.util.Random;
import java.util.function.IntToDoubleFunction;

/** Series of a layer of 10 um sampled every half hour, whose means scatter by 0.1 um. */
final class Simulated {
  static final double SIGMA_UM = 0.1;
  static final Instant START = Instant.parse("2026-03-02T06:00:00Z");

  private static final double CENTRE_UM = 10;
  private static final Duration STEP = Duration.ofMinutes(30);

  private Simulated() {}

  /** Noise of standard deviation 1, in which each value is like the one before it by phi. */
  static double[] noise(Random random, int size, double phi) {
    double[] noise = new double[size];
    noise[0] = random.nextGaussian();
    for (int i = 1; i < size; i++) {
      noise[i] = phi * noise[i - 1] + Math.sqrt(1 - phi * phi) * random.nextGaussian();
    }
    return noise;
  }

  /** Noise and what moves, both in standard deviations. */
  static MeanSeries series(double[] noise, IntToDoubleFunction moves) {
    MeanSeries series = new MeanSeries(noise.length);
    for (int i = 0; i < noise.length; i++) {
      series.add(at(i), CENTRE_UM + SIGMA_UM * (noise[i] + moves.applyAsDouble(i)));
    }
    return series;
  }

  static MeanSeries inControl(double[] noise) {
    return series(noise, i -> 0);
  }

  /** Time of a sample, or between samples. */
  static Instant at(double sample) {
    return START.plusMillis(Math.round(sample * STEP.toMillis()));
  }

  static double um(double sigmas) {
    return CENTRE_UM + SIGMA_UM * sigmas;
  }

  static double umPerHour(double sigmasPerSample) {
    return 2 * SIGMA_UM * sigmasPerSample;
  }
}
