package dev.filmward.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.Normal;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StepPlaceLawTest {

  /**
   * Independent noise, either side: P(greatest above b) is about nu(size) exp(-b), with nu(size) =
   * 2 / size^2 exp(-2 sum Phi(-size sqrt(n) / 2) / n) (D. Siegmund, Sequential Analysis, 1985,
   * 8.49).
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.5, 1, 1.5, 2})
  void farOutTheTailIsThatOfSiegmund(double size) {
    double sum = 0;
    for (int n = 1; n < 5000; n++) {
      sum += Normal.STANDARD.below(-size * Math.sqrt(n) / 2) / n;
    }
    double side = 2 / (size * size) * Math.exp(-2 * sum) * Math.exp(-5);

    assertThat(1 - new StepPlaceLaw(size, 0).below(5)).isCloseTo(2 * side, within(0.05 * side));
  }

  /** Seed 13: the two walks as they are, 100 000 times. */
  @ParameterizedTest
  @CsvSource({"1, 0", "1.2, 0.5", "2, 0.5", "1, -0.4", "2, 0.7"})
  void theLawIsThatOfSimulatedWalks(double size, double phi) {
    Random random = new Random(13);
    StepPlaceLaw law = new StepPlaceLaw(size, phi);
    double limit = law.quantile(0.95);
    int runs = 100_000;
    int below = 0;
    for (int i = 0; i < runs; i++) {
      below += greatest(random, size, phi) <= limit ? 1 : 0;
    }

    assertThat(below / (double) runs).isCloseTo(0.95, within(0.003));
  }

  private static double greatest(Random random, double size, double phi) {
    double kept = size * (1 - phi);
    double undone = size * phi;
    double z = random.nextGaussian();
    double after = -size * z - size * size / 2;
    double before = -undone * z - undone * undone / 2;
    double greatest = 0;
    while (after > greatest - 12 || before > greatest - 12) {
      double e = random.nextGaussian();
      greatest = Math.max(greatest, after + undone * e - undone * undone / 2);
      after -= kept * e + kept * kept / 2;
      double f = random.nextGaussian();
      greatest = Math.max(greatest, before + size * f - size * size / 2);
      before += kept * f - kept * kept / 2;
    }
    return greatest;
  }

  @Test
  void aStepThatCannotBeMisplacedNeedsNoAllowance() {
    assertThat(new StepPlaceLaw(8, 0).quantile(0.95)).isZero();
  }

  /** Table nodes and what lies between them. */
  @ParameterizedTest
  @CsvSource({"1, 0.4", "1.6, 0.5", "0.6, 0.1"})
  void theTableIsTheLaw(double size, double phi) {
    double exact = new StepPlaceLaw(size / Math.sqrt(1 - phi * phi), phi).quantile(0.95);

    assertThat(StepPlaceLimits.of(size, phi)).isCloseTo(exact, within(0.06));
  }
}
