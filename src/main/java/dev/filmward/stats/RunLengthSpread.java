package dev.filmward.stats;

import java.util.Arrays;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * How far the run length between false alarms of a mean chart may be from its nominal 370, because
 * its limits were estimated from a few subgroups.
 *
 * <p>The estimated centre is normal with variance 1/m in units of the standard error, the estimated
 * sigma is about normal with relative standard deviation d3/(d2 sqrt(m)) for m subgroups; over a
 * grid of equally likely pairs the run length given the limits is 1/p. Source of the model: C. P.
 * Quesenberry, Journal of Quality Technology 25 (1993) 237. Immutable.
 *
 * @param lower the 10 % point, {@code median} and {@code upper} the 90 % point, in samples
 */
public record RunLengthSpread(double lower, double median, double upper) {
  private static final int GRID = 200;
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /**
   * For limits from a number of subgroups of equal size.
   *
   * @param subgroups at least 2
   * @param size 2 to 100
   */
  public static RunLengthSpread of(int subgroups, int size) {
    if (!(subgroups >= 2)) {
      throw new IllegalArgumentException("limits come from 2 subgroups or more, not " + subgroups);
    }
    double sdCentre = 1 / Math.sqrt(subgroups);
    double sdSigma = ChartConstants.d3(size) / (ChartConstants.d2(size) * Math.sqrt(subgroups));
    double[] z = new double[GRID];
    for (int i = 0; i < GRID; i++) {
      z[i] = NORMAL.inverseCumulativeProbability((i + 0.5) / GRID);
    }
    double[] lengths = new double[GRID * GRID];
    for (int i = 0; i < GRID; i++) {
      for (int j = 0; j < GRID; j++) {
        lengths[i * GRID + j] = runLength(z[i] * sdCentre, 3 * (1 + z[j] * sdSigma));
      }
    }
    Arrays.sort(lengths);
    return new RunLengthSpread(at(lengths, 0.1), at(lengths, 0.5), at(lengths, 0.9));
  }

  private static double runLength(double centre, double width) {
    double beyond =
        NORMAL.cumulativeProbability(centre - width)
            + NORMAL.cumulativeProbability(-centre - width);
    return 1 / beyond;
  }

  private static double at(double[] sorted, double share) {
    return sorted[(int) (share * sorted.length)];
  }
}
