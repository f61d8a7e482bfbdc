package dev.filmward.diagnosis;

import java.util.Arrays;

/**
 * Where the Lomb-Scargle periodograms of several series at the same times are highest, and which
 * part of its squares a sine of that frequency takes off each. Immutable; sources at {@link
 * PeriodLook}.
 */
final class Periodogram {
  private static final int OVERSAMPLING = 3;
  private static final int FEWEST_PERIODS = 4;

  private final double[] minutes;
  private final double[] frequencies;
  private final double[] parts;

  /**
   * @param series about their means, one row each
   */
  Periodogram(double[][] series, double[] minutes) {
    this.minutes = minutes;
    this.frequencies = new double[series.length];
    this.parts = new double[series.length];
    double[] squares = Arrays.stream(series).mapToDouble(one -> LevelScan.dot(one, one)).toArray();
    double span = minutes[minutes.length - 1] - minutes[0];
    int last = OVERSAMPLING * minutes.length / 2;
    for (int k = FEWEST_PERIODS * OVERSAMPLING; span > 0 && k <= last; k++) {
      double frequency = k / (OVERSAMPLING * span);
      double[] powers = powers(series, frequency);
      for (int i = 0; i < series.length; i++) {
        if (squares[i] > 0 && powers[i] / squares[i] > parts[i]) {
          parts[i] = powers[i] / squares[i];
          frequencies[i] = frequency;
        }
      }
    }
  }

  /** Of the highest peak of a series, in periods a minute; 0 where there is none. */
  double frequency(int series) {
    return frequencies[series];
  }

  /** Of the squares, from 0 to 1. */
  double part(int series) {
    return parts[series];
  }

  /** The series that has the highest peak of all. */
  int highest() {
    int highest = 0;
    for (int i = 1; i < parts.length; i++) {
      highest = parts[i] > parts[highest] ? i : highest;
    }
    return highest;
  }

  private double[] powers(double[][] series, double frequency) {
    int n = minutes.length;
    double cc = 0;
    double cs = 0;
    double[] c = new double[series.length];
    double[] s = new double[series.length];
    Turn turn = new Turn(2 * Math.PI * frequency);
    for (int t = 0; t < n; t++) {
      turn.by(t == 0 ? 0 : minutes[t] - minutes[t - 1]);
      cc += turn.cos * turn.cos;
      cs += turn.cos * turn.sin;
      for (int i = 0; i < series.length; i++) {
        c[i] += series[i][t] * turn.cos;
        s[i] += series[i][t] * turn.sin;
      }
    }
    double ss = n - cc;
    double determinant = cc * ss - cs * cs;
    double[] powers = new double[series.length];
    for (int i = 0; i < powers.length && determinant > 1e-6 * n * n; i++) {
      powers[i] = (ss * c[i] * c[i] - 2 * cs * c[i] * s[i] + cc * s[i] * s[i]) / determinant;
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
}
