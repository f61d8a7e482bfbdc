package dev.filmward.variation;

import dev.filmward.stats.CompensatedSum;
import java.io.Serializable;
import java.util.Optional;

/**
 * Takes the lanes of whole samples, one sample at a time, and splits their variation into machine
 * direction (from sample to sample), cross direction (steady differences between lanes) and a
 * residual. Micrometres.
 *
 * <p>All samples have the same lanes; one in which a lane was not measured is counted and left out,
 * since the split needs balanced data. Sums are of deviations from an origin near the readings.
 * Mutable, memory of the lanes only, for one thread; those with the same origin merge.
 *
 * <p>Source: two-way random effects without replication, D. C. Montgomery, Design and Analysis of
 * Experiments, 8th ed. (2013), section 13.2. Reel reports of the trade often give the plain
 * variances of sample means and of lane means instead, which hold a part of the residual.
 */
public final class WebVariation implements Serializable {
  private static final long serialVersionUID = 1L;

  private final double originUm;
  private final CompensatedSum[] byLane;
  private final CompensatedSum all = new CompensatedSum();
  private final CompensatedSum squares = new CompensatedSum();
  private final CompensatedSum sampleSquares = new CompensatedSum();
  private long samples;
  private long incomplete;

  /**
   * For samples of so many lanes.
   *
   * @param lanes at least 2
   * @param originUm a thickness near the readings, the target for instance
   */
  public WebVariation(int lanes, double originUm) {
    if (!(lanes >= 2) || !Double.isFinite(originUm)) {
      throw new IllegalArgumentException(
          "variation across the web needs two lanes or more, not " + lanes);
    }
    this.originUm = originUm;
    byLane = new CompensatedSum[lanes];
    for (int lane = 0; lane < lanes; lane++) {
      byLane[lane] = new CompensatedSum();
    }
  }

  /**
   * Adds a sample.
   *
   * @param readings one for each lane, NaN where it was not measured
   */
  public void add(double[] readings) {
    if (readings.length != byLane.length) {
      throw new IllegalArgumentException(
          byLane.length + " lanes are looked at, not " + readings.length);
    }
    CompensatedSum sample = new CompensatedSum();
    for (double reading : readings) {
      sample.add(reading - originUm);
    }
    if (Double.isNaN(sample.value())) {
      incomplete++;
      return;
    }
    for (int lane = 0; lane < readings.length; lane++) {
      double deviation = readings[lane] - originUm;
      byLane[lane].add(deviation);
      squares.addProduct(deviation, deviation);
    }
    all.add(sample);
    sampleSquares.addProduct(sample.value(), sample.value());
    samples++;
  }

  /** Adds all samples of another one with the same lanes and origin; the other stays as it is. */
  public void merge(WebVariation other) {
    if (other.byLane.length != byLane.length || other.originUm != originUm) {
      throw new IllegalArgumentException("only what has the same lanes and origin can be merged");
    }
    for (int lane = 0; lane < byLane.length; lane++) {
      byLane[lane].add(other.byLane[lane]);
    }
    all.add(other.all);
    squares.add(other.squares);
    sampleSquares.add(other.sampleSquares);
    samples += other.samples;
    incomplete += other.incomplete;
  }

  /** Samples left out because a lane was not measured. */
  public long incomplete() {
    return incomplete;
  }

  /** Empty with fewer than two whole samples. */
  public Optional<WebComponents> components() {
    if (samples < 2) {
      return Optional.empty();
    }
    int lanes = byLane.length;
    double total = all.value();
    double correction = total * total / (samples * lanes);
    double laneSquares = 0;
    for (CompensatedSum lane : byLane) {
      laneSquares += lane.value() * lane.value();
    }
    double ofSamples = sampleSquares.value() / lanes - correction;
    double ofLanes = laneSquares / samples - correction;
    double ofAll = squares.value() - correction;
    double rest = Math.max(0, ofAll - ofSamples - ofLanes);
    double residual = rest / ((samples - 1.0) * (lanes - 1));
    return Optional.of(
        new WebComponents(
            samples,
            lanes,
            originUm + total / (samples * lanes),
            (ofSamples / (samples - 1) - residual) / lanes,
            (ofLanes / (lanes - 1) - residual) / samples,
            residual));
  }
}
