package dev.filmward.chart;

import dev.filmward.stats.Moments;
import java.io.Serializable;
import java.util.Optional;

/**
 * Sums up the levels of samples, in time order, for the limits of a three-way chart; the lanes'
 * profile was frozen from the same samples before. A missing lane does not shift the level, since
 * each reading is taken less the effect of its lane.
 *
 * <p>Mutable, for one thread, constant memory; a baseline merges with the one that follows it in
 * time. Source: D. J. Wheeler and D. S. Chambers, Understanding Statistical Process Control, 3rd
 * ed. (2010), on charts for between and within.
 */
public final class ThreeWayBaseline implements Serializable {
  private static final long serialVersionUID = 1L;

  private final LaneProfile profile;
  private final IndividualsBaseline levels = new IndividualsBaseline();
  private final Moments inverseSizes = new Moments();

  public ThreeWayBaseline(LaneProfile profile) {
    this.profile = profile;
  }

  /** Adds a sample: a reading for each lane, NaN where there is none; one must be there. */
  public void add(double[] readings) {
    LaneReadings corrected = LaneReadings.of(profile.corrected(readings), profile.lanes());
    if (corrected.size() == 0) {
      throw new IllegalArgumentException("a sample has at least one reading");
    }
    levels.add(corrected.mean());
    inverseSizes.add(1.0 / corrected.size());
  }

  /** Adds all samples of a later baseline with the same profile. */
  public void merge(ThreeWayBaseline later) {
    if (!later.profile.equals(profile)) {
      throw new IllegalArgumentException("the lanes' profiles differ");
    }
    levels.merge(later.levels);
    inverseSizes.merge(later.inverseSizes);
  }

  public long samples() {
    return levels.count();
  }

  /** Empty for fewer than two samples. */
  public Optional<ThreeWayLimits> limits() {
    return levels.limits().map(level -> new ThreeWayLimits(profile, level, inverseSizes.mean()));
  }
}
