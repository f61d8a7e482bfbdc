package dev.filmward.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.Moments;
import dev.filmward.stats.Restored;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ThreeWayTest {
  private static final double MISSING = Double.NaN;
  private static final LaneProfile PROFILE = new LaneProfile(new double[] {-3, 0, 3}, 100, 100);

  /** Levels of 10, 12, 11: moving ranges of 2 and 1. */
  @Test
  void limitsOfTheLevelComeFromItsMovingRange() {
    ThreeWayLimits limits = baseline(10, 12, 11).limits().orElseThrow();
    double reach = 3 * 1.5 / (2 / Math.sqrt(Math.PI));

    assertThat(limits.level(3).centre()).isEqualTo(11);
    assertThat(limits.level(3).upper()).isCloseTo(11 + reach, within(1e-12));
    assertThat(limits.jump().upper()).isCloseTo(3.2665 * 1.5, within(1e-4));
  }

  private static ThreeWayBaseline baseline(double... levels) {
    ThreeWayBaseline baseline = new ThreeWayBaseline(PROFILE);
    for (double level : levels) {
      baseline.add(new double[] {level - 3, level, level + 3});
    }
    return baseline;
  }

  @Test
  void aMissingThickLaneIsNoShift() {
    ThreeWayChart chart = new ThreeWayChart(baseline(10, 12, 11).limits().orElseThrow());
    ThreeWayPoint point = chart.next(new double[] {8, 11, MISSING});

    assertThat(point.level()).isEqualTo(11);
    assertThat(point.zLevel()).isZero();
    assertThat(point.within().zFarthestLane()).isZero();
  }

  /** The residual mean square is 1: variance of a level grows by 1/2 - 1/3. */
  @Test
  void aLevelOfFewerLanesHasWiderLimits() {
    ThreeWayLimits limits = baseline(10, 12, 11).limits().orElseThrow();
    double sigma = limits.level().sigma();

    assertThat(limits.level(2).upper() - 11)
        .isCloseTo(3 * Math.sqrt(sigma * sigma + 1 / 6.0), within(1e-12));
    assertThat(limits.level(3).upper() - 11).isCloseTo(3 * sigma, within(1e-12));
  }

  @Test
  void theLaneThatLeftItsProfileIsNamed() {
    ThreeWayChart chart = new ThreeWayChart(baseline(10, 12, 11).limits().orElseThrow());
    ThreeWayPoint point = chart.next(new double[] {8, 17, 14});
    double sigma = PROFILE.sigmaResidual();

    assertThat(point.level()).isEqualTo(13);
    assertThat(point.within().farthestLane()).isEqualTo(1);
    assertThat(point.within().zFarthestLane())
        .isCloseTo(4 / (sigma * Math.sqrt(2 / 3.0)), within(1e-12));
    assertThat(point.within().zDeviation().orElseThrow())
        .isCloseTo(
            new MeanDeviationLimits(0, sigma).zDeviation(3, Math.sqrt((4 + 16 + 4) / 2.0)),
            within(1e-12));
  }

  @Test
  void theFirstSampleHasNoJumpAndASingleLaneNoSpread() {
    ThreeWayChart chart = new ThreeWayChart(baseline(10, 12, 11).limits().orElseThrow());

    assertThat(chart.next(new double[] {8, 11, 14}).zJump()).isEmpty();
    ThreeWayPoint single = chart.next(new double[] {MISSING, 12, MISSING});
    assertThat(single.zJump()).isPresent();
    assertThat(single.within().zDeviation()).isEmpty();
    assertThat(single.within().farthestLane()).isEqualTo(1);
    assertThatThrownBy(() -> chart.next(new double[] {MISSING, MISSING, MISSING}))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /**
   * Five lanes that differ by a few percent, 0.5 % from sample to sample and 1 % besides: limits at
   * 3 sqrt(0.25 + 1/5) = 2.01 %, a shift of 3 % is seen with probability 0.93, while 2.7 of 1000
   * good samples are outside. 40 lines of 300 samples from a fixed seed.
   */
  @Test
  void steadyLaneDifferencesDoNotBlindTheLevelChart() {
    long seed = 22;
    Random random = new Random(seed);
    Moments width = new Moments();
    Moments falseAlarms = new Moments();
    Moments seen = new Moments();
    for (int line = 0; line < 40; line++) {
      double[][] samples = line(random);
      LaneProfile profile = LaneBaselineTest.of(samples).profile();
      ThreeWayBaseline baseline = new ThreeWayBaseline(profile);
      for (double[] sample : samples) {
        baseline.add(sample);
      }
      ThreeWayLimits limits = baseline.limits().orElseThrow();
      width.add(limits.level(5).upper() - limits.level(5).centre());
      ThreeWayChart chart = new ThreeWayChart(limits);
      for (double[] sample : samples) {
        double z = chart.next(sample).zLevel();
        falseAlarms.add(Math.abs(z) > 3 ? 1 : 0);
        seen.add(Math.abs(z + 3 / limits.level().sigma()) > 3 ? 1 : 0);
      }
    }

    assertThat(width.mean()).as("seed %d", seed).isCloseTo(2.012, within(0.03));
    assertThat(falseAlarms.mean()).as("seed %d", seed).isCloseTo(0.0027, within(0.002));
    assertThat(seen.mean()).as("seed %d", seed).isCloseTo(0.93, within(0.02));
  }

  private static double[][] line(Random random) {
    double[] lanes = random.doubles(5).map(u -> 3 * random.nextGaussian()).toArray();
    double[][] samples = new double[300][5];
    for (double[] sample : samples) {
      double level = 100 + 0.5 * random.nextGaussian();
      for (int lane = 0; lane < 5; lane++) {
        sample[lane] = level + lanes[lane] + random.nextGaussian();
      }
    }
    return samples;
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void howeverTheyAreSplitLimitsAndPointsAreTheSame(long seed) {
    Random random = new Random(seed);
    double[][] samples = line(random);
    samples[7][2] = MISSING;
    LaneProfile profile = LaneBaselineTest.of(samples).profile();
    ThreeWayBaseline whole = new ThreeWayBaseline(profile);
    ThreeWayBaseline merged = new ThreeWayBaseline(profile);
    ThreeWayBaseline piece = new ThreeWayBaseline(profile);
    for (double[] sample : samples) {
      whole.add(sample);
      piece.add(sample);
      if (random.nextInt(30) == 0) {
        merged.merge(Restored.from(piece));
        piece = new ThreeWayBaseline(profile);
      }
    }
    merged.merge(piece);
    ThreeWayLimits limits = whole.limits().orElseThrow();

    assertThat(merged.samples()).isEqualTo(300);
    assertThat(merged.limits().orElseThrow().level().sigma())
        .isCloseTo(limits.level().sigma(), within(1e-13));
    ThreeWayChart chart = new ThreeWayChart(limits);
    ThreeWayChart cut = new ThreeWayChart(limits);
    for (double[] sample : samples) {
      cut = random.nextInt(10) == 0 ? Restored.from(cut) : cut;
      assertThat(cut.next(sample)).isEqualTo(chart.next(sample));
    }
  }

  @Test
  void baselinesOfDifferentProfilesDoNotMerge() {
    ThreeWayBaseline other =
        new ThreeWayBaseline(new LaneProfile(new double[] {-1, 0, 1}, 100, 100));

    assertThatThrownBy(() -> baseline(10).merge(other))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(baseline(10).limits()).isEmpty();
  }
}
