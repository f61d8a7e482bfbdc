package dev.filmward.drift;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;

/**
 * The means of a series as numbers to calculate with: times as parts of the whole span (0 to 1) and
 * means less their average, with the products that every fit to them shares. Nobody writes to the
 * arrays.
 */
final class Window {
  private static final double MICROS_PER_HOUR = 3.6e9;

  final double[] times;
  final double[] means;
  final double[] ones;
  final Ar1Product oneOne;
  final Ar1Product oneMean;
  final Ar1Product meanMean;

  private final Instant start;
  private final double spanHours;
  private final double average;

  Window(MeanSeries series) {
    int n = series.size();
    start = series.at(0);
    spanHours = hoursSinceStart(series.at(n - 1));
    average = average(series);
    times = new double[n];
    means = new double[n];
    ones = new double[n];
    Arrays.fill(ones, 1);
    for (int i = 0; i < n; i++) {
      times[i] = spanHours == 0 ? 0 : hoursSinceStart(series.at(i)) / spanHours;
      means[i] = series.mean(i) - average;
    }
    oneOne = Ar1Product.of(ones, ones);
    oneMean = Ar1Product.of(ones, means);
    meanMean = Ar1Product.of(means, means);
  }

  private static double average(MeanSeries series) {
    double sum = 0;
    for (int i = 0; i < series.size(); i++) {
      sum += series.mean(i) - series.mean(0);
    }
    return series.mean(0) + sum / series.size();
  }

  int size() {
    return means.length;
  }

  double spanHours() {
    return spanHours;
  }

  /** What was taken off the means. */
  double average() {
    return average;
  }

  Instant at(double time) {
    return start.plus(Duration.ofNanos(Math.round(time * spanHours * MICROS_PER_HOUR) * 1000));
  }

  /** The part of the span at which an instant lies; above 1 for what is to come. */
  double time(Instant at) {
    return hoursSinceStart(at) / spanHours;
  }

  private double hoursSinceStart(Instant at) {
    return Duration.between(start, at).toNanos() / 1000.0 / MICROS_PER_HOUR;
  }

  /** Whether all means are equal, so that there is no noise to tell drift from. */
  boolean isFlat() {
    return meanMean.plain() == 0;
  }
}
