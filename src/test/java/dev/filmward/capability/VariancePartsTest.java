package dev.filmward.capability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class VariancePartsTest {
  private static final Offset<Double> EXACT = within(1e-9);

  /** Samples 1, 2, 3 plus lanes -1, 0, 1, 2 and nothing else: 4 x 2 between, 3 x 5 of lanes. */
  @Test
  void aTableWithoutResidualFallsIntoItsParts() {
    CapabilityTally tally = CapabilityTally.ofMoments();
    for (int sample = 1; sample <= 3; sample++) {
      tally.add(new int[] {1, 2, 3, 4}, new double[] {sample - 1, sample, sample + 1, sample + 2});
    }
    VarianceParts parts = tally.parts();

    assertThat(parts.betweenSamples()).isCloseTo(4 * 2, EXACT);
    assertThat(parts.betweenLanes()).isCloseTo(3 * 5, EXACT);
    assertThat(parts.residual()).isCloseTo(0, EXACT);
    assertThat(parts.laneShare()).isCloseTo(15 / 23.0, EXACT);
  }

  /** Alike and independent: mean squares are equal, 99 between samples and 396 in the rest. */
  @Test
  void readingsThatDoNotMoveTogetherAllCount() {
    EffectiveSize size = new VarianceParts(500, 100, 5, 99, 4, 396).effectiveSize(0);

    assertThat(size.forMean()).isCloseTo(500, within(1e-6));
    assertThat(size.forVariance()).isCloseTo(500, within(5.0));
  }

  /** Five lanes that show the same at any moment are one reading, not five. */
  @Test
  void readingsThatMoveTogetherCountOnceASample() {
    EffectiveSize size = new VarianceParts(500, 100, 5, 99, 0, 0).effectiveSize(0);

    assertThat(size.forMean()).isCloseTo(100.0 * 495 / 499, within(1.0));
    assertThat(size.forVariance()).isCloseTo(100, EXACT);
  }

  /** With samples that resemble each other: 100 x 0.5/1.5 and 100 x 0.75/1.25 samples. */
  @Test
  void autocorrelationMakesThemCountLess() {
    EffectiveSize size = new VarianceParts(500, 100, 5, 99, 0, 0).effectiveSize(0.5);

    assertThat(size.forMean()).isCloseTo(100 / 3.0, within(0.5));
    assertThat(size.forVariance()).isCloseTo(60, EXACT);
  }

  @Test
  void aSingleSampleIsWorthOneReading() {
    EffectiveSize size = new VarianceParts(5, 1, 5, 0, 10, 0).effectiveSize(0);

    assertThat(size.forVariance()).isEqualTo(1);
  }

  @Test
  void withoutVariationAllReadingsCountAndNoLaneHasAShare() {
    VarianceParts parts = new VarianceParts(50, 10, 5, 0, 0, 0);

    assertThat(parts.laneShare()).isZero();
    assertThat(parts.effectiveSize(0).forVariance()).isEqualTo(50);
  }
}
