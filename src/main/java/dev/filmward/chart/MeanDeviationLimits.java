package dev.filmward.chart;

import dev.filmward.stats.ChartConstants;
import dev.filmward.subgroup.Subgroup;
import java.io.Serializable;
import java.util.OptionalDouble;

/**
 * Limits of a mean and standard deviation chart at three standard deviations, for subgroups of any
 * size up to 100: to be preferred to ranges from ten lanes on. Micrometres, or fractions for a
 * share.
 *
 * <p>Where the lower limit of the deviation would be negative it is 0. A sigma of 0 is allowed:
 * then any difference is infinitely far off. Immutable.
 *
 * <p>Source: ISO 7870-2, constants B5 and B6, which for limits from an average deviation of equal
 * subgroups are the same as B3 and B4.
 *
 * @param centre of the means
 * @param sigmaWithin standard deviation of single readings within a subgroup
 */
public record MeanDeviationLimits(double centre, double sigmaWithin) implements Serializable {
  private static final long serialVersionUID = 1L;

  public MeanDeviationLimits {
    new MeanRangeLimits(centre, sigmaWithin);
  }

  /** Limits of the mean of {@code size} readings, at least 1. */
  public Band mean(int size) {
    return means().mean(size);
  }

  /** Limits of the standard deviation of {@code size} readings, 2 to 100. */
  public Band deviation(int size) {
    return new Band(
        ChartConstants.factorB5(size) * sigmaWithin,
        ChartConstants.c4(size) * sigmaWithin,
        ChartConstants.factorB6(size) * sigmaWithin);
  }

  /** The standard deviation of a subgroup takes the place of its range. */
  public ChartPoint plot(Subgroup subgroup) {
    int size = subgroup.size();
    return new ChartPoint(
        means().zMean(size, subgroup.mean()),
        size == 1
            ? OptionalDouble.empty()
            : OptionalDouble.of(zDeviation(size, Math.sqrt(subgroup.sumOfSquares() / (size - 1)))));
  }

  /** Distance of a deviation from its centre line, in standard deviations of such a deviation. */
  public double zDeviation(int size, double deviation) {
    if (sigmaWithin == 0 && deviation == 0) {
      return 0;
    }
    return (deviation / sigmaWithin - ChartConstants.c4(size)) / ChartConstants.c5(size);
  }

  private MeanRangeLimits means() {
    return new MeanRangeLimits(centre, sigmaWithin);
  }
}
