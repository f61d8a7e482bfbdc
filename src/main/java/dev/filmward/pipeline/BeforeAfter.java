package dev.filmward.pipeline;

import dev.filmward.capability.LaneValues;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.stats.Moments;
import dev.filmward.subgroup.Subgroup;
import dev.filmward.subgroup.Subgrouping;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/**
 * All layers and the total before and after a moment: means of the samples' means, um, and of each
 * lane. Immutable.
 *
 * @param at the moment; samples at it count as after
 */
public record BeforeAfter(Instant at, int before, int after, List<Row> rows) {
  public BeforeAfter {
    rows = List.copyOf(rows);
  }

  /** One characteristic on both sides. */
  public record Row(Characteristic characteristic, Optional<Side> before, Optional<Side> after) {}

  /**
   * What some samples have.
   *
   * @param deviationUm standard deviation of the means; 0 of a single one
   * @param laneUm mean of each lane by its number, um
   */
  public record Side(double meanUm, double deviationUm, TreeMap<Integer, Double> laneUm) {}

  static BeforeAfter of(Structure structure, List<Sample> samples, Instant at) {
    List<Sample> before = new ArrayList<>();
    List<Sample> after = new ArrayList<>();
    for (Sample sample : samples) {
      (sample.takenAt().isBefore(at) ? before : after).add(sample);
    }
    Subgrouping subgrouping = Subgrouping.layersAndTotal(structure);
    List<Row> rows = new ArrayList<>();
    for (Characteristic each : subgrouping.characteristics()) {
      rows.add(new Row(each, side(subgrouping, before, each), side(subgrouping, after, each)));
    }
    return new BeforeAfter(at, before.size(), after.size(), rows);
  }

  private static Optional<Side> side(
      Subgrouping subgrouping, List<Sample> samples, Characteristic characteristic) {
    Moments means = new Moments();
    TreeMap<Integer, Moments> lanes = new TreeMap<>();
    for (Sample sample : samples) {
      subgrouping.of(sample, characteristic).map(Subgroup::mean).ifPresent(means::add);
      double[] values = LaneValues.of(sample, characteristic);
      for (int lane = 0; lane < values.length; lane++) {
        if (!Double.isNaN(values[lane])) {
          lanes.computeIfAbsent(sample.lane(lane), number -> new Moments()).add(values[lane]);
        }
      }
    }
    if (means.count() == 0) {
      return Optional.empty();
    }
    TreeMap<Integer, Double> laneMeans = new TreeMap<>();
    lanes.forEach((number, moments) -> laneMeans.put(number, moments.mean()));
    double deviation = means.standardDeviation().orElse(0);
    return Optional.of(new Side(means.mean(), deviation, laneMeans));
  }
}
