package dev.filmward.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class NormalRangeTest {

  static Stream<Map<String, String>> points() {
    return Figures.table(NormalRangeTest.class, "range-points.csv").stream();
  }

  @ParameterizedTest
  @MethodSource("points")
  void probabilityPointsAgreeWithAnotherComputation(Map<String, String> row) {
    NormalRange range = new NormalRange(Integer.parseInt(row.get("n")));
    row.forEach(
        (p, point) -> {
          if (!p.equals("n")) {
            double expected = Double.parseDouble(point);
            assertThat(range.quantile(Double.parseDouble(p)))
                .as("point of %s", p)
                .isCloseTo(expected, within(1e-9 * expected));
          }
        });
  }

  /** The difference of two is half-normal with variance 2. */
  @ParameterizedTest
  @ValueSource(doubles = {1e-6, 0.01, 1, 3, 8, 20})
  void twoNumbersHaveAClosedForm(double w) {
    double above = 2 * Normal.STANDARD.above(w / Math.sqrt(2));
    NormalRange range = new NormalRange(2);

    assertThat(range.above(w)).isCloseTo(above, within(2e-13 * above));
    assertThat(range.below(w)).isCloseTo(1 - above, within(2e-13));
  }

  /** Within a width of 0.001 the density of all n is flat: n (w^(n-1)) times that of n at x. */
  @Test
  void aVerySmallRangeKeepsItsDigits() {
    double w = 1e-3;
    double expected = 5 * Math.pow(w / Math.sqrt(2 * Math.PI), 4) / Math.sqrt(2 * Math.PI);
    double integralOfFifthPower = Math.sqrt(2 * Math.PI / 5);

    assertThat(new NormalRange(5).below(w))
        .isCloseTo(expected * integralOfFifthPower, within(1e-6 * expected));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 25, 100})
  void bothTailsMakeOne(int n) {
    NormalRange range = new NormalRange(n);
    for (double w = 0.1; w < 9; w += 0.7) {
      assertThat(range.below(w) + range.above(w)).as("w %s", w).isCloseTo(1, within(1e-13));
    }
    assertThat(range.below(0)).isZero();
    assertThat(range.above(0)).isEqualTo(1);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 101})
  void aSizeThatHasNoChartIsRefused(int n) {
    assertThatThrownBy(() -> new NormalRange(n)).isInstanceOf(IllegalArgumentException.class);
  }
}
