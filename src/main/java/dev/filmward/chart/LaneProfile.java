package dev.filmward.chart;

import dev.filmward.stats.ChartConstants;
import java.io.Serializable;
import java.util.Arrays;

/**
 * How much each lane is usually above or below the mean across the web, frozen from a baseline, and
 * what varies besides. In the unit of the readings; the effects sum to 0. Immutable.
 */
public final class LaneProfile implements Serializable {
  private static final long serialVersionUID = 1L;

  private final double[] effects;
  private final double residualSquares;
  private final long degrees;

  /**
   * A profile; the effects are copied.
   *
   * @param residualSquares of the readings about level and lane effect
   * @param degrees of freedom of these, at least 1
   */
  public LaneProfile(double[] effects, double residualSquares, long degrees) {
    if (effects.length < 2 || !(residualSquares >= 0) || degrees < 1) {
      throw new IllegalArgumentException(
          "no profile of " + effects.length + " lanes with squares " + residualSquares);
    }
    this.effects = effects.clone();
    this.residualSquares = residualSquares;
    this.degrees = degrees;
  }

  public int lanes() {
    return effects.length;
  }

  /** Of the lane at an index from 0. */
  public double effect(int lane) {
    return effects[lane];
  }

  public double residualMeanSquare() {
    return residualSquares / degrees;
  }

  /** Standard deviation of a single reading about level and lane effect, unbiased. */
  public double sigmaResidual() {
    return Math.sqrt(residualMeanSquare()) / ChartConstants.c4Pooled(degrees);
  }

  /** Readings less the effects of their lanes; NaN stays NaN. */
  public double[] corrected(double[] readings) {
    LaneReadings.of(readings, effects.length);
    double[] corrected = readings.clone();
    for (int lane = 0; lane < effects.length; lane++) {
      corrected[lane] -= effects[lane];
    }
    return corrected;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof LaneProfile that
        && Arrays.equals(effects, that.effects)
        && residualSquares == that.residualSquares
        && degrees == that.degrees;
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(effects) * 31 + Double.hashCode(residualSquares);
  }

  @Override
  public String toString() {
    return "LaneProfile" + Arrays.toString(effects) + ", residual " + residualMeanSquare();
  }
}
