package dev.filmward.chart;

import dev.filmward.stats.Cholesky;
import dev.filmward.stats.CompensatedSum;
import java.io.Serializable;

/**
 * Sums up samples, lane by lane, for the steady differences between lanes: the least squares fit of
 * a level for each sample and an effect for each lane. Lanes that were not measured (NaN) may
 * differ from sample to sample; the fit allows for that exactly.
 *
 * <p>Only equations for the lanes are kept, so memory does not grow with the samples. Mutable, for
 * one thread; baselines merge.
 *
 * <p>Source: S. R. Searle, Linear Models for Unbalanced Data (1987), section 4.9, the two-way
 * classification without interaction, with the samples eliminated.
 */
public final class LaneBaseline implements Serializable {
  private static final long serialVersionUID = 1L;

  private final int lanes;
  private final double[][] equations;
  private final CompensatedSum[] sides;
  private final CompensatedSum squares = new CompensatedSum();
  private final long[] counts;
  private long degreesWithinSamples;

  /** For samples of {@code lanes} lanes, at least 2. */
  public LaneBaseline(int lanes) {
    if (lanes < 2) {
      throw new IllegalArgumentException("lanes can differ if there are two, not " + lanes);
    }
    this.lanes = lanes;
    equations = new double[lanes][lanes];
    sides = new CompensatedSum[lanes];
    counts = new long[lanes];
    for (int lane = 0; lane < lanes; lane++) {
      sides[lane] = new CompensatedSum();
    }
  }

  /** Adds a sample: a reading for each lane, NaN where nothing was measured. */
  public void add(double[] readings) {
    LaneReadings present = LaneReadings.of(readings, lanes);
    if (present.size() < 2) {
      return;
    }
    double mean = present.mean();
    for (int lane = 0; lane < lanes; lane++) {
      if (present.has(lane)) {
        double deviation = readings[lane] - mean;
        sides[lane].add(deviation);
        squares.addProduct(deviation, deviation);
        counts[lane]++;
        addEquation(present, lane);
      }
    }
    degreesWithinSamples += present.size() - 1;
  }

  private void addEquation(LaneReadings present, int lane) {
    equations[lane][lane]++;
    for (int other = 0; other < lanes; other++) {
      if (present.has(other)) {
        equations[lane][other] -= 1.0 / present.size();
      }
    }
  }

  /** Adds all samples of another baseline; the other stays as it is. */
  public void merge(LaneBaseline other) {
    if (other.lanes != lanes) {
      throw new IllegalArgumentException("lanes differ: " + lanes + " and " + other.lanes);
    }
    for (int lane = 0; lane < lanes; lane++) {
      for (int i = 0; i < lanes; i++) {
        equations[lane][i] += other.equations[lane][i];
      }
      sides[lane].add(other.sides[lane]);
      counts[lane] += other.counts[lane];
    }
    squares.add(other.squares);
    degreesWithinSamples += other.degreesWithinSamples;
  }

  /**
   * The lanes' usual profile.
   *
   * @throws IllegalStateException if a lane was never measured together with others, or if there
   *     are too few samples to tell lanes from noise
   */
  public LaneProfile profile() {
    long degrees = degreesWithinSamples - (lanes - 1);
    if (degrees < 1) {
      throw new IllegalStateException("too few samples for the profile of " + lanes + " lanes");
    }
    double[] effects = effects();
    CompensatedSum residual = new CompensatedSum();
    residual.add(squares);
    for (int lane = 0; lane < lanes; lane++) {
      residual.addProduct(-effects[lane], sides[lane]);
    }
    return new LaneProfile(effects, Math.max(0, residual.value()), degrees);
  }

  /** Solves the equations with the condition that the effects sum to 0. */
  private double[] effects() {
    double[][] conditioned = new double[lanes][lanes];
    double[] right = new double[lanes];
    for (int lane = 0; lane < lanes; lane++) {
      if (counts[lane] == 0) {
        throw new IllegalStateException(
            "lane " + (lane + 1) + " was never measured together with others; leave it out");
      }
      right[lane] = sides[lane].value();
      for (int i = 0; i < lanes; i++) {
        conditioned[lane][i] = equations[lane][i] + 1;
      }
    }
    return new Cholesky(conditioned).solve(right);
  }
}
