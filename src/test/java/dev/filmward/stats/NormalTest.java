package dev.filmward.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class NormalTest {
  private static final Normal NORMAL = Normal.STANDARD;
  private static final double FOURTEEN_DIGITS = 1e-14;

  static Stream<Map<String, String>> quantiles() {
    return rows("quantile");
  }

  static Stream<Map<String, String>> tails() {
    return rows("tail");
  }

  private static Stream<Map<String, String>> rows(String kind) {
    return Figures.table(NormalTest.class, "normal.csv").stream()
        .filter(row -> row.get("kind").equals(kind));
  }

  private static double number(Map<String, String> row, String heading) {
    return Double.parseDouble(row.get(heading));
  }

  @ParameterizedTest
  @MethodSource("tails")
  void bothTailsHaveFourteenDigits(Map<String, String> row) {
    double z = number(row, "at");
    double below = number(row, "below");
    double above = number(row, "above");

    assertThat(NORMAL.below(z)).isCloseTo(below, within(FOURTEEN_DIGITS * below));
    assertThat(NORMAL.above(z)).isCloseTo(above, within(FOURTEEN_DIGITS * above));
    double logBelow = z < 0 ? Math.log(below) : Math.log1p(-above);
    assertThat(NORMAL.logBelow(z))
        .isCloseTo(logBelow, within(FOURTEEN_DIGITS * Math.abs(logBelow)));
  }

  /** A probability near 1 is a double that is off by up to 1e-16, which the tail magnifies. */
  @ParameterizedTest
  @MethodSource("quantiles")
  void quantilesHaveFourteenDigits(Map<String, String> row) {
    double p = number(row, "at");
    double z = number(row, "below");
    double representation = p >= 0.5 ? Math.ulp(p) / Normal.density(z) : 0;

    assertThat(NORMAL.quantile(p))
        .isCloseTo(z, within(FOURTEEN_DIGITS * Math.abs(z) + representation));
    assertThat(NORMAL.upperQuantile(p))
        .isCloseTo(-z, within(FOURTEEN_DIGITS * Math.abs(z) + representation));
  }

  /** log(Phi(-40)) = -804.6084420137538, from mpmath; the probability itself is 0 in a double. */
  @Test
  void theLogarithmOfAVerySmallTailIsFinite() {
    assertThat(NORMAL.below(-40)).isZero();
    assertThat(NORMAL.logBelow(-40)).isCloseTo(-804.6084420137538, within(1e-11));
  }

  @Test
  void theFarEndsAreCertain() {
    assertThat(NORMAL.below(Double.POSITIVE_INFINITY)).isEqualTo(1);
    assertThat(NORMAL.above(Double.POSITIVE_INFINITY)).isZero();
    assertThat(NORMAL.below(Double.NEGATIVE_INFINITY)).isZero();
    assertThat(NORMAL.below(Double.NaN)).isNaN();
  }
}
