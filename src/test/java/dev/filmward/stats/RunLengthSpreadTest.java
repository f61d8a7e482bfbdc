package dev.filmward.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Random;
import org.junit.jupiter.api.Test;

class RunLengthSpreadTest {
  /**
   * Against a simulation of what limits from 25 subgroups of 5 deliver: the means and ranges are
   * drawn as readings, nothing of the model is used. 4000 baselines, so a 10 % point has a relative
   * standard error of about 2 %.
   */
  @Test
  void meetsASimulationOfBaselines() {
    Random random = new Random(42);
    double[] lengths = new double[4000];
    for (int i = 0; i < lengths.length; i++) {
      lengths[i] = simulated(random, 25, 5);
    }
    java.util.Arrays.sort(lengths);
    RunLengthSpread spread = RunLengthSpread.of(25, 5);
    assertThat(spread.lower()).isCloseTo(lengths[400], withinPercentage(10));
    assertThat(spread.median()).isCloseTo(lengths[2000], withinPercentage(10));
    assertThat(spread.upper()).isCloseTo(lengths[3600], withinPercentage(10));
  }

  @Test
  void comesToTheNominalLengthWithManySubgroups() {
    // 1 / (2 x 0.00134990) = 370.40, the normal tail beyond three
    assertThat(RunLengthSpread.of(1_000_000, 5).median()).isCloseTo(370.40, withinPercentage(0.5));
  }

  @Test
  void asksForTwoSubgroups() {
    assertThatIllegalArgumentException().isThrownBy(() -> RunLengthSpread.of(1, 5));
  }

  private static double simulated(Random random, int subgroups, int size) {
    double sum = 0;
    double ranges = 0;
    for (int i = 0; i < subgroups; i++) {
      double least = Double.MAX_VALUE;
      double greatest = -Double.MAX_VALUE;
      for (int j = 0; j < size; j++) {
        double x = random.nextGaussian();
        sum += x;
        least = Math.min(least, x);
        greatest = Math.max(greatest, x);
      }
      ranges += greatest - least;
    }
    double centre = sum / (subgroups * size) * Math.sqrt(size);
    // d2 = 2.326 for five readings (ASTM MNL 7)
    double width = 3 * ranges / subgroups / 2.326;
    return 1 / (tail(width + centre) + tail(width - centre));
  }

  /** Normal upper tail by the continued fraction of Abramowitz and Stegun 26.2.14. */
  private static double tail(double x) {
    double fraction = x;
    for (int k = 60; k >= 1; k--) {
      fraction = x + k / fraction;
    }
    return Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI) / fraction;
  }
}
