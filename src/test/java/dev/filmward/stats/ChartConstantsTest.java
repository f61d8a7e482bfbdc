package dev.filmward.stats;

import static java.util.Map.entry;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Map;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ChartConstantsTest {
  private static final Map<String, IntToDoubleFunction> BY_NAME =
      Map.ofEntries(
          entry("d2", ChartConstants::d2),
          entry("d3", ChartConstants::d3),
          entry("c4", ChartConstants::c4),
          entry("A", ChartConstants::factorA),
          entry("A2", ChartConstants::factorA2),
          entry("A3", ChartConstants::factorA3),
          entry("B3", ChartConstants::factorB3),
          entry("B4", ChartConstants::factorB4),
          entry("B5", ChartConstants::factorB5),
          entry("B6", ChartConstants::factorB6),
          entry("D1", ChartConstants::factorD1),
          entry("D2", ChartConstants::factorD2),
          entry("D3", ChartConstants::factorD3),
          entry("D4", ChartConstants::factorD4),
          entry("E2", ChartConstants::factorE2),
          entry("E3", ChartConstants::factorE3));

  private static final double ONE_IN_TEN_BILLION_AS_PERCENT = 1e-8;

  @Test
  void allConstantsOfAllSizesAgreeWithAnotherComputation() {
    for (Map<String, String> row : Figures.table(getClass(), "constants.csv")) {
      int n = Integer.parseInt(row.get("n"));
      BY_NAME.forEach(
          (name, constant) ->
              assertThat(constant.applyAsDouble(n))
                  .as("%s of n = %d", name, n)
                  .isCloseTo(
                      Double.parseDouble(row.get(name)),
                      withinPercentage(ONE_IN_TEN_BILLION_AS_PERCENT)));
    }
  }

  /**
   * The printed table carries errors in the last digit. Two entries were made from a d3 rounded to
   * 0.734 and are further off: the exact D1 and D2 of 19 are 1.4885 and 5.8894.
   */
  @Test
  void theTableInTheHandbookIsMet() {
    for (Map<String, String> row : Figures.table(getClass(), "constants-printed.csv")) {
      int n = Integer.parseInt(row.get("n"));
      row.forEach(
          (name, printed) -> {
            if (!name.equals("n") && !(n == 19 && (name.equals("D1") || name.equals("D2")))) {
              assertThat(BY_NAME.get(name).applyAsDouble(n))
                  .as("%s of n = %d", name, n)
                  .isCloseTo(
                      Double.parseDouble(printed), within(name.equals("c4") ? 6e-5 : 0.0011));
            }
          });
    }
    assertThat(ChartConstants.factorD1(19)).isCloseTo(1.4885, within(0.0001));
    assertThat(ChartConstants.factorD2(19)).isCloseTo(5.8894, within(0.0001));
  }

  /**
   * The difference of two is half-normal with variance 2; the range of three is half the sum of the
   * three differences; the deviation of two is their difference over sqrt(2).
   */
  @Test
  void twoAndThreeReadingsHaveClosedForms() {
    assertThat(ChartConstants.d2(2)).isCloseTo(2 / Math.sqrt(Math.PI), within(1e-13));
    assertThat(ChartConstants.d3(2)).isCloseTo(Math.sqrt(2 - 4 / Math.PI), within(1e-12));
    assertThat(ChartConstants.d2(3)).isCloseTo(3 / Math.sqrt(Math.PI), within(1e-13));
    assertThat(ChartConstants.c4(2)).isCloseTo(Math.sqrt(2 / Math.PI), within(1e-15));
    assertThat(ChartConstants.c4(3)).isCloseTo(Math.sqrt(Math.PI) / 2, within(1e-15));
  }

  /** sqrt(2/d) Gamma((d+1)/2) / Gamma(d/2), computed with mpmath (40 digits). */
  @ParameterizedTest
  @CsvSource({
    "80, 0.99687995884129960167",
    "100, 0.99750316395510508721",
    "150, 0.99833473377540152179",
    "800, 0.99968754890439376277",
    "10000, 0.99997500031253906147"
  })
  void theConstantOfAPooledDeviationServesAnyNumberOfDegrees(long degrees, double c4) {
    assertThat(ChartConstants.c4Pooled(degrees)).isCloseTo(c4, within(3e-14));
  }

  @Test
  void aPooledDeviationHasADegreeOfFreedom() {
    assertThatThrownBy(() -> ChartConstants.c4Pooled(0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void manyThreadsThatAskAtOnceGetTheSame() {
    assertThat(
            IntStream.range(0, 400).parallel().mapToDouble(i -> ChartConstants.d3(61)).distinct())
        .hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(ints = {Integer.MIN_VALUE, -1, 0, 1, 101, Integer.MAX_VALUE})
  void aSizeOutsideTwoToHundredIsRefusedWithTheRange(int n) {
    BY_NAME.forEach(
        (name, constant) ->
            assertThatThrownBy(() -> constant.applyAsDouble(n))
                .as(name)
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("2 to 100")
                .hasMessageContaining(Integer.toString(n)));
  }
}
