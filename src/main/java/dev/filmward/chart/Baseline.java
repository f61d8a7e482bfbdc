package dev.filmward.chart;

import dev.filmward.stats.ChartConstants;
import dev.filmward.stats.CompensatedSum;
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

  /** The ranges of all subgroups of one size. */
  private static final class RangesOfSize implements Serializable {
    private static final long serialVersionUID = 1L;
    private final CompensatedSum sum = new CompensatedSum();
    private long count;
  }

  private final Moments means = new Moments();
  private final RangesOfSize[] bySize = new RangesOfSize[ChartConstants.LARGEST_SIZE + 1];
  private long subgroups;

  public Baseline() {
    for (int size = 0; size < bySize.length; size++) {
      bySize[size] = new RangesOfSize();
    }
  }

  public void add(Subgroup subgroup) {
    add(subgroup.size(), subgroup.mean(), subgroup.range());
  }

  /** Adds a subgroup by its figures; the range of a subgroup of one is not looked at. */
  public void add(int size, double mean, double range) {
    if (!(size >= 1 && size <= ChartConstants.LARGEST_SIZE)) {
      throw new IllegalArgumentException(
          "a mean and range chart takes subgroups of 1 to "
              + ChartConstants.LARGEST_SIZE
              + " readings, not "
              + size
              + "; chart fewer lanes, every second one for instance");
    }
    if (size >= 2 && (!(range >= 0) || !Double.isFinite(range))) {
      throw new IllegalArgumentException("a range is finite and not negative, not " + range);
    }
    means.addSummary(size, mean, 0);
    subgroups++;
    if (size >= 2) {
      bySize[size].sum.add(range);
      bySize[size].count++;
    }
  }

  /** Adds all subgroups of another baseline; the other stays as it is. */
  public void merge(Baseline other) {
    means.merge(other.means);
    subgroups += other.subgroups;
    for (int size = 2; size < bySize.length; size++) {
      bySize[size].sum.add(other.bySize[size].sum);
      bySize[size].count += other.bySize[size].count;
    }
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

  /**
   * Mean of the ranges of the subgroups of two and more.
   *
   * @throws IllegalStateException if there are none; {@link #sigmaWithin} is then empty
   */
  public double rangeBar() {
    CompensatedSum ranges = new CompensatedSum();
    long count = 0;
    for (RangesOfSize ofSize : bySize) {
      ranges.add(ofSize.sum);
      count += ofSize.count;
    }
    if (count == 0) {
      throw new IllegalStateException("no subgroup of two or more, so no range");
    }
    return ranges.value() / count;
  }

  /** Standard deviation within subgroups; empty if there is no subgroup of two or more. */
  public OptionalDouble sigmaWithin() {
    double weights = 0;
    CompensatedSum weighted = new CompensatedSum();
    for (int size = 2; size < bySize.length; size++) {
      RangesOfSize ofSize = bySize[size];
      if (ofSize.count > 0) {
        double d2 = ChartConstants.d2(size);
        double d3 = ChartConstants.d3(size);
        weights += ofSize.count * (d2 * d2) / (d3 * d3);
        weighted.addProduct(d2 / (d3 * d3), ofSize.sum);
      }
    }
    return weights == 0 ? OptionalDouble.empty() : OptionalDouble.of(weighted.value() / weights);
  }

  /** Empty if there is no subgroup of two or more. */
  public Optional<MeanRangeLimits> limits() {
    OptionalDouble sigma = sigmaWithin();
    return sigma.isEmpty()
        ? Optional.empty()
        : Optional.of(new MeanRangeLimits(centre(), sigma.getAsDouble()));
  }
}
