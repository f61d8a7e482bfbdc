package dev.filmward.diagnosis;

import java.util.List;

/**
 * Looks for the one change of level in several series that stands out most, over all beginnings and
 * all ways in which layers move together, each as a step and as a drift. The noise is learnt from
 * what the clearest change leaves. Immutable.
 */
final class LevelScan {
  static final int FEWEST_BEFORE = 15;
  static final int FEWEST_STEP = 2;
  static final int FEWEST_DRIFT = 8;
  static final int FEWEST_LEVEL_GAP = 4;

  private final double[][] level;
  private final double[] minutes;
  private final int last;
  private final List<Direction> directions;

  /**
   * @param level by sample and layer
   * @param last index of the latest sample that a change may begin with
   */
  LevelScan(double[][] level, double[] minutes, int last, List<Direction> directions) {
    this.level = level;
    this.minutes = minutes;
    this.last = last;
    this.directions = directions;
  }

  /** A course with the direction that explains most of it. */
  record Found(Course course, Direction direction, double gain, UsualNoise noise) {}

  boolean isLongEnough() {
    return level.length >= FEWEST_BEFORE + FEWEST_STEP && last >= FEWEST_BEFORE;
  }

  Found clearest() {
    Found found = clearest(UsualNoise.ofDifferences(level));
    UsualNoise noise = UsualNoise.of(without(found.course()));
    found = clearest(noise);
    noise = UsualNoise.of(without(found.course()));
    return clearest(noise);
  }

  /** What is left of the series when a course is taken out of every layer. */
  double[][] without(Course course) {
    double[] x = course.regressor(minutes);
    double[] coefficients = new Whitened(level, minutes, 0).fit(x).coefficients();
    double[][] rest = new double[level.length][coefficients.length];
    for (int t = 0; t < rest.length; t++) {
      for (int i = 0; i < coefficients.length; i++) {
        rest[t][i] = level[t][i] - coefficients[i] * x[t];
      }
    }
    return rest;
  }

  /** What is left of the series when two regressors are taken out of every layer in turn. */
  double[][] withoutWave(double[] cosine, double[] sine) {
    double[] c = new Whitened(level, minutes, 0).fit(cosine).coefficients();
    double[] s = new Whitened(level, minutes, 0).fit(sine).coefficients();
    double[][] rest = new double[level.length][c.length];
    for (int t = 0; t < rest.length; t++) {
      for (int i = 0; i < c.length; i++) {
        rest[t][i] = level[t][i] - c[i] * cosine[t] - s[i] * sine[t];
      }
    }
    return rest;
  }

  private Found clearest(UsualNoise noise) {
    Whitened white = new Whitened(level, minutes, noise.phi);
    double[][] weighed = new double[directions.size()][];
    double[] sizes = new double[directions.size()];
    for (int d = 0; d < weighed.length; d++) {
      weighed[d] = noise.weighed(directions.get(d).moves());
      sizes[d] = dot(weighed[d], directions.get(d).moves());
    }
    Found best = new Found(Course.step(FEWEST_BEFORE), directions.get(0), -1, noise);
    for (int from = FEWEST_BEFORE; from <= Math.min(last, level.length - FEWEST_STEP); from++) {
      best = better(best, Course.step(from), white, weighed, sizes);
      if (from <= level.length - FEWEST_DRIFT) {
        best = better(best, Course.drift(from), white, weighed, sizes);
      }
    }
    return best;
  }

  private Found better(
      Found best, Course course, Whitened white, double[][] weighed, double[] sizes) {
    Whitened.Fit fit = white.fit(course);
    Found found = best;
    for (int d = 0; d < weighed.length; d++) {
      double along = dot(weighed[d], fit.coefficients());
      double gain = along * along / sizes[d] * fit.information();
      if (gain > found.gain()) {
        found = new Found(course, directions.get(d), gain, best.noise());
      }
    }
    return found;
  }

  static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
