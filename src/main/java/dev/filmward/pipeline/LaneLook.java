package dev.filmward.pipeline;

import dev.filmward.capability.LaneValues;
import dev.filmward.chart.Band;
import dev.filmward.chart.LaneBaseline;
import dev.filmward.chart.LaneProfile;
import dev.filmward.chart.ThreeWayBaseline;
import dev.filmward.chart.ThreeWayChart;
import dev.filmward.chart.ThreeWayLimits;
import dev.filmward.chart.ThreeWayPoint;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.pipeline.Analysis.ChartSignal;
import dev.filmward.pipeline.Analysis.Charted;
import dev.filmward.pipeline.KeptSamples.Kept;
import dev.filmward.rule.Side;
import dev.filmward.stats.ChartConstants;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Draws the three-way chart of a series: level, jump, and spread about the lanes' profile. Lanes
 * are those of the baseline, at most 100; readings of others are passed over. Samples are kept,
 * since the profile that corrects them is known only at the end. For one thread.
 */
final class LaneLook {
  private static final double LIMIT = 3;

  private final Optional<BaselineChoice> choice;
  private final KeptSamples<Sample> samples = new KeptSamples<>();

  LaneLook(Optional<BaselineChoice> choice) {
    this.choice = choice;
  }

  void add(Sample sample) {
    samples.add(sample, sample);
  }

  /** Empty where lanes cannot be told from noise. */
  Optional<Charted> chart(Characteristic characteristic) {
    List<Sample> measured = measured(characteristic);
    BaselineIndices baseline =
        new BaselineIndices(choice, measured.size(), index -> measured.get(index).takenAt());
    int[] lanes = lanes(measured, baseline);
    if (lanes.length < 2 || lanes.length > ChartConstants.LARGEST_SIZE) {
      return Optional.empty();
    }
    List<double[]> rows = new ArrayList<>();
    for (Sample sample : measured) {
      rows.add(row(sample, characteristic, lanes));
    }
    return profile(rows, baseline, lanes.length)
        .flatMap(profile -> limits(profile, rows, baseline))
        .map(limits -> plot(limits, rows, lanes));
  }

  private List<Sample> measured(Characteristic characteristic) {
    return samples.inTimeOrder().stream()
        .map(Kept::figures)
        .filter(sample -> present(LaneValues.of(sample, characteristic)) > 0)
        .toList();
  }

  private static int[] lanes(List<Sample> measured, BaselineIndices baseline) {
    TreeSet<Integer> lanes = new TreeSet<>();
    for (int i = 0; i < measured.size(); i++) {
      for (int lane = 0; baseline.has(i) && lane < measured.get(i).laneCount(); lane++) {
        lanes.add(measured.get(i).lane(lane));
      }
    }
    return lanes.stream().mapToInt(Integer::intValue).toArray();
  }

  private static double[] row(Sample sample, Characteristic characteristic, int[] lanes) {
    double[] values = LaneValues.of(sample, characteristic);
    double[] row = new double[lanes.length];
    int at = 0;
    for (int i = 0; i < lanes.length; i++) {
      while (at < values.length && sample.lane(at) < lanes[i]) {
        at++;
      }
      row[i] = at < values.length && sample.lane(at) == lanes[i] ? values[at] : Double.NaN;
    }
    return row;
  }

  private static Optional<LaneProfile> profile(
      List<double[]> rows, BaselineIndices baseline, int lanes) {
    LaneBaseline sum = new LaneBaseline(lanes);
    for (int i = 0; i < rows.size(); i++) {
      if (baseline.has(i)) {
        sum.add(rows.get(i));
      }
    }
    try {
      return Optional.of(sum.profile());
    } catch (IllegalStateException | IllegalArgumentException tooFew) {
      return Optional.empty();
    }
  }

  private static Optional<ThreeWayLimits> limits(
      LaneProfile profile, List<double[]> rows, BaselineIndices baseline) {
    ThreeWayBaseline sum = new ThreeWayBaseline(profile);
    for (int i = 0; i < rows.size(); i++) {
      if (baseline.has(i) && present(rows.get(i)) > 0) {
        sum.add(rows.get(i));
      }
    }
    return sum.limits();
  }

  private static Charted plot(ThreeWayLimits limits, List<double[]> rows, int[] lanes) {
    ThreeWayChart chart = new ThreeWayChart(limits);
    List<ChartSignal> signals = new ArrayList<>();
    int usual = 1;
    for (int i = 0; i < rows.size(); i++) {
      int size = present(rows.get(i));
      usual = Math.max(usual, size);
      if (size > 0) {
        addBeyond(signals, i, chart.next(rows.get(i)), lanes);
      }
    }
    Map<String, Band> bands = new LinkedHashMap<>();
    bands.put("level", limits.level(usual));
    bands.put("jump", limits.jump());
    if (usual > 1) {
      bands.put("within", limits.within(usual));
    }
    return new Charted(OtherChart.THREE_WAY.word(), bands, signals);
  }

  private static void addBeyond(
      List<ChartSignal> signals, int index, ThreeWayPoint point, int[] lanes) {
    if (Math.abs(point.zLevel()) > LIMIT) {
      signals.add(new ChartSignal("level", index, point.zLevel() > 0 ? Side.HIGH : Side.LOW));
    }
    if (point.zJump().orElse(0) > LIMIT) {
      signals.add(new ChartSignal("jump", index, Side.HIGH));
    }
    double zWithin = point.within().zDeviation().orElse(0);
    if (zWithin > LIMIT) {
      String lane = "lane " + lanes[point.within().farthestLane()];
      signals.add(new ChartSignal("within", index, Side.HIGH, List.of(lane)));
    } else if (zWithin < -LIMIT) {
      signals.add(new ChartSignal("within", index, Side.LOW));
    }
  }

  private static int present(double[] row) {
    int size = 0;
    for (double value : row) {
      size += Double.isNaN(value) ? 0 : 1;
    }
    return size;
  }
}
