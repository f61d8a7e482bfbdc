package dev.filmward.chart;

import java.io.Serializable;

/**
 * Limits of a three-way chart: the level of each sample against what levels usually do from one
 * sample to the next, the jump to the level before, and the spread of the lanes about their usual
 * profile. To be preferred where lanes differ steadily: these differences widen the range and blind
 * the mean chart. In the unit of the readings. Immutable.
 *
 * <p>A sample with fewer lanes has wider limits: the variance of its level is that of the baseline
 * plus the residual variance times what 1/n is above its mean in the baseline (random effects).
 *
 * <p>Source: as {@link ThreeWayBaseline}; D. C. Montgomery, Introduction to Statistical Quality
 * Control, 7th ed. (2013), section 6.4.4.
 *
 * @param level limits of levels whose samples have the usual number of lanes
 * @param inverseSize mean of 1/n over the samples of the baseline
 */
public record ThreeWayLimits(LaneProfile profile, IndividualsLimits level, double inverseSize)
    implements Serializable {
  private static final long serialVersionUID = 1L;

  public ThreeWayLimits {
    if (!(inverseSize > 0 && inverseSize <= 1)) {
      throw new IllegalArgumentException("1/n is in (0, 1], not " + inverseSize);
    }
  }

  /** Limits of the level of a sample with {@code size} lanes measured. */
  public Band level(int size) {
    return limits(size).value();
  }

  /** Limits of the jump from the sample before. */
  public Band jump() {
    return level.movingRange();
  }

  /** Limits of the standard deviation of {@code size} lanes about their profile. */
  public Band within(int size) {
    return within().deviation(size);
  }

  double zLevel(int size, double value) {
    return limits(size).zValue(value);
  }

  double zWithin(int size, double deviation) {
    return within().zDeviation(size, deviation);
  }

  private MeanDeviationLimits within() {
    return new MeanDeviationLimits(0, profile.sigmaResidual());
  }

  private IndividualsLimits limits(int size) {
    double usual = level.sigma() * level.sigma();
    double residual = profile.residualMeanSquare();
    double variance = usual + residual * (1.0 / size - inverseSize);
    double least = Math.min(usual, residual / size);
    return new IndividualsLimits(level.centre(), Math.sqrt(Math.max(least, variance)));
  }
}
