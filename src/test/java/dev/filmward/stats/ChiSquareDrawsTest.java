package dev.filmward.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers drawn from chi-square distributions. */
class ChiSquareDrawsTest {
  private static final int DRAWS = 40_000;

  /**
   * The greatest distance between the drawn distribution and the computed one stays under 1.95 /
   * sqrt(n), which chance exceeds once in a thousand (Kolmogorov).
   */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 9, 60, 5000})
  void theyAreDistributedAsTheySay(long degrees) {
    ChiSquareDraws draws = new ChiSquareDraws(3);
    double[] drawn = DoubleStream.generate(() -> draws.next(degrees)).limit(DRAWS).toArray();
    Arrays.sort(drawn);
    ChiSquare law = new ChiSquare(degrees);
    double farthest = 0;
    for (int i = 0; i < DRAWS; i++) {
      farthest = Math.max(farthest, Math.abs(law.below(drawn[i]) - (i + 0.5) / DRAWS));
    }
    assertThat(farthest).isCloseTo(0, within(1.95 / Math.sqrt(DRAWS)));
  }

  @Test
  void theSameSeedGivesTheSameNumbersAndNoDegreesNone() {
    assertThat(new ChiSquareDraws(5).next(4)).isEqualTo(new ChiSquareDraws(5).next(4));
    assertThat(new ChiSquareDraws(5).next(4)).isNotEqualTo(new ChiSquareDraws(6).next(4));
    assertThatThrownBy(() -> new ChiSquareDraws(5).next(0))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
