package dev.filmward.chart;

import dev.filmward.stats.ChartConstants;
import dev.filmward.stats.CompensatedSum;
import dev.filmward.stats.Moments;
import dev.filmward.subgroup.Subgroup;
import java.io.Serializable;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Sums up the subgroups that limits of a mean and standard deviation chart are computed from (Phase
 * I), in memory that does not grow with their number. Micrometres, or fractions for a share.
 *
 * <p>A subgroup of one counts for the centre and not for the spread. Sizes may differ. Mutable, for
 * one thread; baselines merge.
 *
 * <p>Source: I. W. Burr, Statistical Quality Control Methods (1976), for the average of deviations
 * over c4 and its form for unequal sizes; ISO 7870-2 and D. C. Montgomery, Introduction to
 * Statistical Quality Control, 7th ed. (2013), section 6.3, for the pooled form.
 */
public final class DeviationBaseline implements Serializable {
  private static final long serialVersionUID = 1L;

  private final Moments means = new Moments();
  private final SpreadBySize deviations = new SpreadBySize();
  private final CompensatedSum squares = new CompensatedSum();
  private long degrees;
  private long subgroups;

  /** How sigma is made from the subgroups. */
  public enum Estimate {
    /** Average standard deviation over c4; a wild subgroup counts as any other. */
    AVERAGE,
    /** Root of the pooled variance over c4: of less variance where sizes differ. */
    POOLED
  }

  public void add(Subgroup subgroup) {
    add(subgroup.size(), subgroup.mean(), subgroup.sumOfSquares());
  }

  /** Adds a subgroup by its figures; the squares of a subgroup of one are not looked at. */
  public void add(int size, double mean, double sumOfSquares) {
    SpreadBySize.checkSize(size);
    if (size >= 2 && (!(sumOfSquares >= 0) || !Double.isFinite(sumOfSquares))) {
      throw new IllegalArgumentException(
          "a sum of squares is finite and not negative, not " + sumOfSquares);
    }
    means.addSummary(size, mean, 0);
    subgroups++;
    if (size >= 2) {
      deviations.add(size, Math.sqrt(sumOfSquares / (size - 1)));
      squares.add(sumOfSquares);
      degrees += size - 1;
    }
  }

  /** Adds all subgroups of another baseline; the other stays as it is. */
  public void merge(DeviationBaseline other) {
    means.merge(other.means);
    deviations.merge(other.deviations);
    squares.add(other.squares);
    degrees += other.degrees;
    subgroups += other.subgroups;
  }

  public long subgroups() {
    return subgroups;
  }

  /** Mean of all readings; there must be a subgroup. */
  public double centre() {
    return means.mean();
  }

  /** Mean of the standard deviations; empty if there is no subgroup of two or more. */
  public OptionalDouble averageDeviation() {
    return deviations.average();
  }

  /** Root of the pooled variance; empty if there is no subgroup of two or more. */
  public OptionalDouble pooledDeviation() {
    return degrees == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(Math.sqrt(squares.value() / degrees));
  }

  /** Unbiased for the standard deviation; empty if there is no subgroup of two or more. */
  public OptionalDouble sigmaWithin(Estimate estimate) {
    if (degrees == 0) {
      return OptionalDouble.empty();
    }
    return estimate == Estimate.AVERAGE
        ? deviations.sigma(ChartConstants::c4, ChartConstants::c5)
        : OptionalDouble.of(pooledDeviation().getAsDouble() / ChartConstants.c4Pooled(degrees));
  }

  /** Empty if there is no subgroup of two or more. */
  public Optional<MeanDeviationLimits> limits(Estimate estimate) {
    OptionalDouble sigma = sigmaWithin(estimate);
    return sigma.isEmpty()
        ? Optional.empty()
        : Optional.of(new MeanDeviationLimits(centre(), sigma.getAsDouble()));
  }
}
