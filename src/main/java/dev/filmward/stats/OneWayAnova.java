package dev.filmward.stats;

import java.io.Serializable;

/**
 * Analysis of variance of groups of numbers, one group at a time, of any sizes. The squares between
 * groups are those of all numbers less those within groups, both in twice the precision of a
 * double, so that a large common part costs no digits. A group without numbers changes nothing.
 *
 * <p>Mutable, for one thread; two analyses of different groups merge.
 *
 * <p>Source: D. C. Montgomery, Design and Analysis of Experiments, 8th ed. (2013), section 3.3.
 */
public final class OneWayAnova implements Serializable {
  private static final long serialVersionUID = 1L;

  private final Moments all = new Moments();
  private final CompensatedSum within = new CompensatedSum();
  private long groups;

  public void addGroup(Moments group) {
    if (group.count() > 0) {
      all.merge(group);
      within.add(group.sumOfSquares());
      groups++;
    }
  }

  /** Adds all groups of another analysis; the other stays as it is. */
  public void merge(OneWayAnova other) {
    all.merge(other.all);
    within.add(other.within);
    groups += other.groups;
  }

  /**
   * The table. There must be two groups, and a number more than there are groups ({@link
   * IllegalStateException}).
   */
  public AnovaTable table() {
    if (groups < 2 || all.count() <= groups) {
      throw new IllegalStateException(
          "no analysis of " + all.count() + " numbers in " + groups + " groups");
    }
    double insides = within.value();
    return new AnovaTable(
        new AnovaTable.Part(Math.max(0, all.sumOfSquares() - insides), groups - 1),
        new AnovaTable.Part(insides, all.count() - groups));
  }
}
