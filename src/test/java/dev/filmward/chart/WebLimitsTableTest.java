package dev.filmward.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.ChartConstants;
import dev.filmward.stats.Moments;
import dev.filmward.subgroup.Subgroup;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What ranges across the web do to the mean chart, and what the three-way chart does instead.
 *
 * <p>Model: a reading is level + lane + residual, all in percent of the mean; levels (standard
 * deviation "time") and residuals are drawn anew, lanes are steady. One drawing of five lanes says
 * little of their standard deviation, so that a half width from one web strays by a third of
 * itself; each line of the table below is therefore for a web whose lanes are stretched until its
 * ranges give the half width of the table, and what follows is held against the table. 300 webs of
 * 200 samples, limits from the same 200 samples.
 *
 * <p>Tolerances: half widths 4 %; false signals of the mean chart 8 % or 0.5 of 1000; of the
 * three-way chart 1 of 1000; probabilities of detection 0.04. The table is itself a simulation of
 * fewer webs, printed to two digits; errors of this one are a tenth of these tolerances.
 */
class WebLimitsTableTest {
  private static final int WEBS = 300;
  private static final int SAMPLES = 200;
  private static final long SEED = 20_261_118;

  /** What the charts said, summed up over all webs. */
  private static final class Tally {
    private final Moments halfWidth = new Moments();
    private final Moments falseSignals = new Moments();
    private final Moments sees2 = new Moments();
    private final Moments sees3 = new Moments();

    void add(double half, double[] distances) {
      halfWidth.add(half);
      for (double distance : distances) {
        falseSignals.add(Math.abs(distance) > half ? 1000 : 0);
        sees2.add(Math.abs(distance + 2) > half ? 1 : 0);
        sees3.add(Math.abs(distance + 3) > half ? 1 : 0);
      }
    }
  }

  @ParameterizedTest(name = "{0} lanes, lane {1} %, time {2} %, residual 1 %")
  @CsvSource({
    "5, 3, 0.5, 4.78, 0, 2.00, 2.7, 0.000, 0.005, 0.50, 0.94",
    "5, 3, 1, 4.42, 0.05, 3.29, 2.5, 0.013, 0.10, 0.12, 0.40",
    "5, 1, 1.5, 1.93, 221, 4.70, 3.0, -1, -1, 0.04, 0.13",
    "5, 0.5, 2, 1.51, 450, 6.07, 3.3, -1, -1, 0.02, 0.07",
    "10, 3, 0.5, 3.43, 0, 1.79, 2.6, 0.008, 0.24, 0.64, 0.98",
    "10, 1, 1.5, 1.34, 382, 4.60, 3.1, -1, -1, 0.04, 0.15"
  })
  void rangesFailInBothDirectionsAndTheThreeWayChartInNone(
      int lanes,
      double lane,
      double time,
      double half,
      double falseSignals,
      double half3,
      double false3,
      double sees2,
      double sees3,
      double sees2Of3,
      double sees3Of3) {
    Tally ranges = new Tally();
    Tally threeWay = new Tally();
    Random random = new Random(SEED);
    for (int web = 0; web < WEBS; web++) {
      double[] profile = profile(random, lanes, half);
      double[][] samples = samples(random, profile, time);
      addRanges(ranges, samples);
      addThreeWay(threeWay, samples);
    }
    assertThat(ranges.halfWidth.mean()).isCloseTo(half, within(0.04 * half));
    assertThat(ranges.falseSignals.mean())
        .isCloseTo(falseSignals, within(Math.max(0.5, 0.08 * falseSignals)));
    assertThat(threeWay.halfWidth.mean()).isCloseTo(half3, within(0.04 * half3));
    assertThat(threeWay.falseSignals.mean()).isCloseTo(false3, within(1.0));
    if (sees2 >= 0) {
      assertThat(ranges.sees2.mean()).isCloseTo(sees2, within(0.04));
      assertThat(ranges.sees3.mean()).isCloseTo(sees3, within(0.04));
    }
    assertThat(threeWay.sees2.mean()).isCloseTo(sees2Of3, within(0.04));
    assertThat(threeWay.sees3.mean()).isCloseTo(sees3Of3, within(0.04));
    assertThat(half)
        .as("three standard deviations of %s %% and 1 %% over the root of the lanes", lane)
        .isCloseTo(3 * Math.hypot(lane, 1) / Math.sqrt(lanes), within(0.15 * half));
  }

  /** Steady lanes whose ranges, together with residuals, give the wanted half width on average. */
  private static double[] profile(Random random, int lanes, double half) {
    double[] drawn = random.doubles(lanes).map(unused -> random.nextGaussian()).toArray();
    double[][] residuals = new double[2000][lanes];
    for (double[] row : residuals) {
      for (int i = 0; i < lanes; i++) {
        row[i] = random.nextGaussian();
      }
    }
    double wanted = half * ChartConstants.d2(lanes) * Math.sqrt(lanes) / 3;
    double low = 0;
    double high = 40;
    for (int i = 0; i < 30; i++) {
      double middle = (low + high) / 2;
      if (meanRange(drawn, middle, residuals) > wanted) {
        high = middle;
      } else {
        low = middle;
      }
    }
    double[] profile = drawn.clone();
    for (int i = 0; i < lanes; i++) {
      profile[i] *= low;
    }
    return profile;
  }

  private static double meanRange(double[] drawn, double stretch, double[][] residuals) {
    double sum = 0;
    for (double[] row : residuals) {
      double least = Double.MAX_VALUE;
      double greatest = -Double.MAX_VALUE;
      for (int i = 0; i < row.length; i++) {
        double value = stretch * drawn[i] + row[i];
        least = Math.min(least, value);
        greatest = Math.max(greatest, value);
      }
      sum += greatest - least;
    }
    return sum / residuals.length;
  }

  private static double[][] samples(Random random, double[] profile, double time) {
    double[][] samples = new double[SAMPLES][profile.length];
    for (double[] sample : samples) {
      double level = 100 + time * random.nextGaussian();
      for (int i = 0; i < profile.length; i++) {
        sample[i] = level + profile[i] + random.nextGaussian();
      }
    }
    return samples;
  }

  private static void addRanges(Tally tally, double[][] samples) {
    Baseline baseline = new Baseline();
    double[] means = new double[samples.length];
    for (int i = 0; i < samples.length; i++) {
      Subgroup subgroup = Subgroup.of(samples[i], samples[i].length);
      baseline.add(subgroup);
      means[i] = subgroup.mean();
    }
    Band limits = baseline.limits().orElseThrow().mean(samples[0].length);
    tally.add(limits.upper() - limits.centre(), lessCentre(means, limits.centre()));
  }

  private static void addThreeWay(Tally tally, double[][] samples) {
    LaneBaseline lanes = new LaneBaseline(samples[0].length);
    for (double[] sample : samples) {
      lanes.add(sample);
    }
    ThreeWayBaseline baseline = new ThreeWayBaseline(lanes.profile());
    for (double[] sample : samples) {
      baseline.add(sample);
    }
    ThreeWayLimits limits = baseline.limits().orElseThrow();
    ThreeWayChart chart = new ThreeWayChart(limits);
    double[] levels = new double[samples.length];
    for (int i = 0; i < samples.length; i++) {
      levels[i] = chart.next(samples[i]).level();
    }
    Band level = limits.level(samples[0].length);
    tally.add(level.upper() - level.centre(), lessCentre(levels, level.centre()));
  }

  private static double[] lessCentre(double[] values, double centre) {
    double[] distances = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      distances[i] = values[i] - centre;
    }
    return distances;
  }
}
