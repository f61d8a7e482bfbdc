package dev.filmward.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.ChartConstants;
import dev.filmward.stats.Restored;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LaneBaselineTest {
  private static final double MISSING = Double.NaN;

  /** Five scans of five lanes; the squares split by arithmetic into 26 + 50 + 16. */
  private static final double[][] SCANS = {
    {12, 14, 11, 13, 15},
    {13, 16, 12, 13, 16},
    {11, 13, 10, 12, 14},
    {14, 15, 13, 14, 19},
    {12, 14, 11, 15, 13}
  };

  @Test
  void withAllLanesTheEffectsAreTheLanesMeansLessTheGrandMean() {
    LaneProfile profile = of(SCANS).profile();
    double[] expected = {12.4 - 13.4, 14.4 - 13.4, 11.4 - 13.4, 0, 15.4 - 13.4};

    assertThat(effects(profile)).containsExactly(expected, within(1e-14));
    assertThat(profile.residualMeanSquare()).isCloseTo(16 / 16.0, within(1e-14));
    assertThat(profile.sigmaResidual()).isCloseTo(1 / ChartConstants.c4(17), within(1e-14));
  }

  /** Least squares with levels and effects as unknowns, solved by a general-purpose library. */
  @Test
  void withMissingLanesTheFitIsTheLeastSquaresFit() {
    double[][] scans = Arrays.stream(SCANS).map(double[]::clone).toArray(double[][]::new);
    scans[0][1] = MISSING;
    scans[2][4] = MISSING;
    scans[3][0] = MISSING;
    scans[3][1] = MISSING;
    LaneProfile profile = of(scans).profile();
    double[] expected = {
      -1.0132450331125558,
      1.344370860927165,
      -2.099337748344385,
      -0.0993377483443814,
      1.8675496688741546
    };

    assertThat(effects(profile)).containsExactly(expected, within(1e-11));
    assertThat(profile.residualMeanSquare()).isCloseTo(14.211920529801327 / 12, within(1e-12));
  }

  @Test
  void aSampleOfOneLaneSaysNothingOfLanes() {
    LaneBaseline baseline = of(SCANS);
    baseline.add(new double[] {MISSING, MISSING, 99, MISSING, MISSING});

    assertThat(baseline.profile()).isEqualTo(of(SCANS).profile());
  }

  @Test
  void whatCannotBeToldIsSaid() {
    assertThatThrownBy(() -> of(new double[][] {{1, 2}}).profile())
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("too few samples");
    assertThatThrownBy(
            () -> of(new double[][] {{1, 2, MISSING}, {1, 3, MISSING}, {2, 3, MISSING}}).profile())
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("lane 3 was never measured");
    assertThatThrownBy(() -> new LaneBaseline(1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> of(SCANS).add(new double[] {1, 2}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new LaneBaseline(2).add(new double[] {1, Double.NEGATIVE_INFINITY}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> of(SCANS).merge(new LaneBaseline(4)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void howeverItIsSplitTheProfileIsTheSame(long seed) {
    Random random = new Random(seed);
    LaneBaseline whole = new LaneBaseline(6);
    LaneBaseline merged = new LaneBaseline(6);
    LaneBaseline piece = new LaneBaseline(6);
    for (int i = 0; i < 200; i++) {
      double[] readings = new double[6];
      for (int lane = 0; lane < 6; lane++) {
        readings[lane] = random.nextInt(8) == 0 ? MISSING : 12 + lane + random.nextGaussian();
      }
      whole.add(readings);
      piece.add(readings);
      if (random.nextInt(20) == 0) {
        merged.merge(Restored.from(piece));
        piece = new LaneBaseline(6);
      }
    }
    merged.merge(piece);

    assertThat(effects(merged.profile())).containsExactly(effects(whole.profile()), within(1e-13));
    assertThat(merged.profile().sigmaResidual())
        .isCloseTo(whole.profile().sigmaResidual(), within(1e-13));
  }

  static LaneBaseline of(double[][] scans) {
    LaneBaseline baseline = new LaneBaseline(scans[0].length);
    for (double[] scan : scans) {
      baseline.add(scan);
    }
    return baseline;
  }

  private static double[] effects(LaneProfile profile) {
    double[] effects = new double[profile.lanes()];
    for (int lane = 0; lane < effects.length; lane++) {
      effects[lane] = profile.effect(lane);
    }
    return effects;
  }
}
