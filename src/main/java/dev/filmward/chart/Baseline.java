package dev.filmward.chart;

import dev.filmward.stats.ChartConstants;
import dev.filmward.stats.Moments;
import dev.filmward.subgroup.Subgroup;
import java.io.Serializable;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Sums up the subgroups that limits are computed from (Phase I), in memory that does not grow with
 * their number. Micrometres, or fractions for a share.
 *
 * <p>A subgroup of one counts for the centre and not for the spread. Sizes may differ: sigma is
 * then the linear combination of the ranges that is unbiased and has the least variance, which with
 * equal sizes is the average range over d2. Mutable, for one thread; baselines merge.
 *
 * <p>Source: I. W. Burr, Statistical Quality Control Methods (1976), for unequal sizes; ISO 7870-2
 * for equal ones.
 */
public final class Baseline implements Serializable {
  private static final long serialVersionUID = 1L;

  private final Moments means = new Moments();
  private final SpreadBySize ranges = new SpreadBySize();
  private long subgroups;

  public void add(Subgroup subgroup) {
    add(subgroup.size(), subgroup.mean(), subgroup.range());
  }

  /** Adds a subgroup by its figures; the range of a subgroup of one is not looked at. */
  public void add(int size, double mean, double range) {
    SpreadBySize.checkSize(size);
    if (size >= 2 && (!(range >= 0) || !Double.isFinite(range))) {
      throw new IllegalArgumentException("a range is finite and not negative, not " + range);
    }
    means.addSummary(size, mean, 0);
    subgroups++;
    if (size >= 2) {
      ranges.add(size, range);
    }
  }

  /** Adds all subgroups of another baseline; the other stays as it is. */
  public void merge(Baseline other) {
    means.merge(other.means);
    ranges.merge(other.ranges);
    subgroups += other.subgroups;
  }

  public long subgroups() {
    return subgroups;
  }

  public long readings() {
    return means.count();
  }

  /**
   * Mean of all readings, that is of the subgroups' means weighted by size. There must be a
   * subgroup.
   */
  public double centre() {
    return means.mean();
  }

  /** The means, each as often as its subgroup has readings. */
  public Moments weightedMeans() {
    Moments copy = new Moments();
    copy.merge(means);
    return copy;
  }

  /**
   * Mean of the ranges of the subgroups of two and more.
   *
   * @throws IllegalStateException if there are none; {@link #sigmaWithin} is then empty
   */
  public double rangeBar() {
    return ranges
        .average()
        .orElseThrow(() -> new IllegalStateException("no subgroup of two or more, so no range"));
  }

  /** Standard deviation within subgroups; empty if there is no subgroup of two or more. */
  public OptionalDouble sigmaWithin() {
    return ranges.sigma(ChartConstants::d2, ChartConstants::d3);
  }

  /** Empty if there is no subgroup of two or more. */
  public Optional<MeanRangeLimits> limits() {
    OptionalDouble sigma = sigmaWithin();
    return sigma.isEmpty()
        ? Optional.empty()
        : Optional.of(new MeanRangeLimits(centre(), sigma.getAsDouble()));
  }
}
