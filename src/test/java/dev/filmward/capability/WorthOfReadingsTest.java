package dev.filmward.capability;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.stats.NoncentralT;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * Simulated weeks of 100 samples of 5 lanes: steady lane differences, samples that move as a whole
 * and remember half of it an hour later, and noise in every reading. How often is the true Ppk at
 * or above its 95 % limit?
 */
class WorthOfReadingsTest {
  private static final long SEED = 4711;
  private static final int WEEKS = 2000;
  private static final int SAMPLES = 100;
  private static final double MEMORY = 0.5;
  private static final int[] LANES = {1, 2, 3, 4, 5};
  private static final double[] LANE_EFFECTS = {-0.6, -0.3, 0, 0.3, 0.6};

  /** 1 of samples, 1 of noise and (0.36 + 0.09 + 0 + 0.09 + 0.36) / 5 of lanes. */
  private static final double SIGMA = Math.sqrt(1 + 1 + 0.18);

  /** Of the average of a sample: half of the 1 in 1 + 1/5. */
  private static final double LAG1 = MEMORY / 1.2;

  private static final double TRUE_PPK = 4 / 3.0;

  /** Not quite 95: the spread of a week with a memory is itself a little too small. */
  @Test
  void whatReadingsAreWorthBringsTheLimitNearToItsConfidence() {
    SplittableRandom random = new SplittableRandom(SEED);
    int holds = 0;
    int holdsAsIfIndependent = 0;
    for (int week = 0; week < WEEKS; week++) {
      CapabilityTally tally = week(random);
      holds += holds(tally, tally.parts().effectiveSize(LAG1)) ? 1 : 0;
      holdsAsIfIndependent += holds(tally, EffectiveSize.independent(500)) ? 1 : 0;
    }

    assertThat(holds / (double) WEEKS).as("seed %d", SEED).isBetween(0.91, 0.97);
    assertThat(holdsAsIfIndependent / (double) WEEKS).as("seed %d", SEED).isLessThan(0.85);
  }

  private static CapabilityTally week(SplittableRandom random) {
    CapabilityTally tally = CapabilityTally.ofMoments();
    double level = random.nextGaussian();
    for (int sample = 0; sample < SAMPLES; sample++) {
      level = MEMORY * level + Math.sqrt(1 - MEMORY * MEMORY) * random.nextGaussian();
      double[] readings = new double[LANES.length];
      for (int i = 0; i < readings.length; i++) {
        readings[i] = level + LANE_EFFECTS[i] + random.nextGaussian();
      }
      tally.add(LANES, readings);
    }
    return tally;
  }

  /** An estimate so great, or greater, is no rarer than 1 in 20 if the truth is the truth. */
  private static boolean holds(CapabilityTally tally, EffectiveSize size) {
    double sigma = tally.points().standardDeviation().getAsDouble();
    double ppk = (tally.points().mean() + 3 * TRUE_PPK * SIGMA) / (3 * sigma);
    double scale = 3 * Math.sqrt(size.forMean());
    return new NoncentralT(size.forVariance() - 1, scale * TRUE_PPK).above(scale * ppk) >= 0.05;
  }
}
