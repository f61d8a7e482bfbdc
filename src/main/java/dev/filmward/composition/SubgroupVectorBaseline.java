package dev.filmward.composition;

import dev.filmward.stats.CrossMoments;
import java.io.Serializable;

/**
 * Sums up subgroups of vectors, for instance one vector for each lane of a sample, that a T squared
 * chart of subgroup means is computed from; the covariances are those within subgroups. All
 * subgroups must have one size, of two or more, for which the limits are exact.
 *
 * <p>Steady differences between lanes count as variation within, as on a mean and range chart.
 * Mutable, for one thread, constant memory; baselines merge.
 */
public final class SubgroupVectorBaseline implements Serializable {
  private static final long serialVersionUID = 1L;

  private final int width;
  private final CrossMoments all;
  private final double[][] within;
  private long subgroups;
  private int size;

  public SubgroupVectorBaseline(int width) {
    this.width = width;
    all = new CrossMoments(width);
    within = new double[width][width];
  }

  public void add(double[][] subgroup) {
    checkSize(subgroup.length);
    CrossMoments own = new CrossMoments(width);
    for (double[] vector : subgroup) {
      own.add(vector);
    }
    addAll(within, own.sumsOfProducts());
    all.merge(own);
    size = subgroup.length;
    subgroups++;
  }

  /** Adds all subgroups of another baseline; the other stays as it is. */
  public void merge(SubgroupVectorBaseline other) {
    if (other.subgroups > 0) {
      checkSize(other.size);
      all.merge(other.all);
      addAll(within, other.within);
      size = other.size;
      subgroups += other.subgroups;
    }
  }

  private void checkSize(int other) {
    if (other < 2 || (size != 0 && other != size)) {
      throw new IllegalArgumentException(
          "all subgroups have one size of two or more, not " + size + " and " + other);
    }
  }

  private static void addAll(double[][] sums, double[][] more) {
    for (int i = 0; i < sums.length; i++) {
      for (int j = 0; j < sums.length; j++) {
        sums[i][j] += more[i][j];
      }
    }
  }

  public long subgroups() {
    return subgroups;
  }

  /**
   * Frozen means and covariances.
   *
   * @throws IllegalStateException for fewer than two subgroups
   */
  public TSquaredReference reference() {
    if (subgroups < 2) {
      throw new IllegalStateException("no covariances of " + subgroups + " subgroups");
    }
    TSquaredDesign design = new TSquaredDesign(width, subgroups, size, CovarianceEstimate.SAMPLE);
    double[][] covariance = new double[width][width];
    for (int i = 0; i < width; i++) {
      for (int j = 0; j < width; j++) {
        covariance[i][j] = within[i][j] / design.degrees();
      }
    }
    return new TSquaredReference(all.means(), covariance, design);
  }
}
