package dev.filmward.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class PanelIntegralTest {

  /** The integral of x^k from 1 to 3 is (3^(k + 1) - 1) / (k + 1). */
  @Test
  void isExactForPolynomialsUpToTheNinthDegree() {
    for (int k = 0; k <= 9; k++) {
      int power = k;
      double exact = (Math.pow(3, k + 1) - 1) / (k + 1);
      assertThat(PanelIntegral.of(x -> Math.pow(x, power), 1, 3))
          .isCloseTo(exact, within(1e-13 * exact));
    }
    assertThat(PanelIntegral.of(x -> Math.pow(x, 10), -1, 1)).isNotCloseTo(2 / 11.0, within(1e-4));
  }

  @Test
  void halfASigmaOfTheNormalDensityIsTakenToThirteenDigits() {
    assertThat(PanelIntegral.of(Normal::density, 0.5, 1))
        .isCloseTo(Normal.STANDARD.below(1) - Normal.STANDARD.below(0.5), within(1e-13));
  }
}
