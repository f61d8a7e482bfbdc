package dev.filmward.chart;

import dev.filmward.stats.ChartConstants;
import dev.filmward.subgroup.Subgroup;
import java.io.Serializable;
import java.util.OptionalDouble;

/**
 * Limits of a mean and range chart at three standard deviations, for subgroups of any size up to
 * 100. Micrometres, or fractions for a share.
 *
 * <p>Where the lower limit of the range would be negative it is 0, and no range is low. A sigma of
 * 0 (a baseline of equal readings) is allowed: then any difference is infinitely far off.
 * Immutable.
 *
 * <p>Source: ISO 7870-2; D. C. Montgomery, Introduction to Statistical Quality Control, 7th ed.
 * (2013), section 6.2.
 *
 * @param centre of the means
 * @param sigmaWithin standard deviation of single readings within a subgroup
 */
public record MeanRangeLimits(double centre, double sigmaWithin) implements Serializable {
  private static final long serialVersionUID = 1L;

  public MeanRangeLimits {
    if (!Double.isFinite(centre) || !(sigmaWithin >= 0) || !Double.isFinite(sigmaWithin)) {
      throw new IllegalArgumentException(
          "no limits from a centre of " + centre + " and a sigma of " + sigmaWithin);
    }
  }

  /** Limits of the mean of {@code size} readings, at least 1. */
  public Band mean(int size) {
    double reach = 3 * sigmaWithin / Math.sqrt(atLeastOne(size));
    return new Band(centre - reach, centre, centre + reach);
  }

  /** Limits of the range of {@code size} readings, 2 to 100. */
  public Band range(int size) {
    return new Band(
        ChartConstants.factorD1(size) * sigmaWithin,
        ChartConstants.d2(size) * sigmaWithin,
        ChartConstants.factorD2(size) * sigmaWithin);
  }

  public ChartPoint plot(Subgroup subgroup) {
    return plot(subgroup.size(), subgroup.mean(), subgroup.range());
  }

  /** The range of a subgroup of one is not looked at. */
  public ChartPoint plot(int size, double mean, double range) {
    return new ChartPoint(
        zMean(size, mean),
        size == 1 ? OptionalDouble.empty() : OptionalDouble.of(zRange(size, range)));
  }

  /** Distance of a mean from the centre, in standard deviations of such a mean. */
  public double zMean(int size, double mean) {
    double distance = mean - centre;
    return distance == 0 ? 0 : distance * Math.sqrt(atLeastOne(size)) / sigmaWithin;
  }

  /** Distance of a range from its centre line, in standard deviations of such a range. */
  public double zRange(int size, double range) {
    if (sigmaWithin == 0 && range == 0) {
      return 0;
    }
    return (range / sigmaWithin - ChartConstants.d2(size)) / ChartConstants.d3(size);
  }

  private static int atLeastOne(int size) {
    if (!(size >= 1)) {
      throw new IllegalArgumentException("a subgroup has at least one reading, not " + size);
    }
    return size;
  }
}
