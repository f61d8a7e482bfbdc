package dev.filmward.diagnosis;

import dev.filmward.stats.Cholesky;

/**
 * How far each layer has moved in a change of level, how sure that is, and which way of moving
 * together accounts for how much of it. Immutable.
 */
final class LevelChange {
  /** No layer follows a pattern better than to this part of its own move. */
  private static final double PATTERN_ERROR = 0.05;

  final Course course;
  final Direction clearest;
  final double gain;

  /** By layer, as a fraction of its usual thickness, at the end of the course. */
  final double[] moves;

  final double[][] covariance;
  final UsualNoise noise;
  final CourseChoice choice;
  private final Cholesky root;
  private final double squares;

  LevelChange(LevelScan.Found found, Course course, Whitened.Fit fit, CourseChoice choice) {
    this.course = course;
    this.choice = choice;
    this.clearest = found.direction();
    this.gain = found.gain();
    this.noise = found.noise();
    this.moves = fit.coefficients();
    int layers = moves.length;
    this.covariance = new double[layers][layers];
    double[][] withError = new double[layers][layers];
    for (int i = 0; i < layers; i++) {
      for (int k = 0; k < layers; k++) {
        covariance[i][k] = noise.covariance[i][k] / fit.information();
        withError[i][k] = covariance[i][k];
      }
      withError[i][i] += PATTERN_ERROR * moves[i] * PATTERN_ERROR * moves[i];
    }
    this.root = new Cholesky(withError);
    this.squares = root.quadraticForm(moves);
  }

  double standardError(int layer) {
    return Math.sqrt(covariance[layer][layer]);
  }

  double z(int layer) {
    return moves[layer] / standardError(layer);
  }

  /**
   * The part that a direction accounts for, with what chance leaves taken off: 1 where no more is
   * left than noise.
   */
  double explained(Direction direction) {
    double rest = misfit(direction) - (moves.length - 1);
    double all = Math.max(1, squares - moves.length);
    return Math.max(0, Math.min(1, 1 - Math.max(0, rest) / all));
  }

  /** Squared distance of the moves from the best multiple of a direction. */
  double misfit(Direction direction) {
    double[] weighed = root.solve(direction.moves());
    double along = LevelScan.dot(weighed, moves);
    return squares - along * along / LevelScan.dot(weighed, direction.moves());
  }

  /** A weighted sum of the moves in standard errors. */
  double z(double[] weights) {
    double variance = 0;
    for (int i = 0; i < weights.length; i++) {
      variance += weights[i] * LevelScan.dot(covariance[i], weights);
    }
    return LevelScan.dot(weights, moves) / Math.sqrt(variance);
  }
}
