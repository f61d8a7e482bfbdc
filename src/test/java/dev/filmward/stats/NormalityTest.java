package dev.filmward.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class NormalityTest {

  static Stream<Map<String, String>> sets() {
    return Figures.table(NormalityTest.class, "normality.csv").stream();
  }

  private static double[] sample(String name) {
    String file =
        switch (name) {
          case "michelson" -> "strd-michelso.csv";
          case "mavro", "lew" -> "strd-" + name + ".csv";
          default -> "sample-" + name + ".csv";
        };
    return Arrays.stream(Figures.rows(NormalityTest.class, file))
        .flatMapToDouble(Arrays::stream)
        .toArray();
  }

  private static double number(Map<String, String> row, String heading) {
    return Double.parseDouble(row.get(heading));
  }

  @ParameterizedTest
  @MethodSource("sets")
  void andersonDarlingAgreesWithAnotherComputation(Map<String, String> row) {
    AndersonDarling test = AndersonDarling.of(sample(row.get("set")));

    assertThat(test.statistic()).isCloseTo(number(row, "a2"), withinPercentage(1e-8));
    assertThat(test.modified()).isCloseTo(number(row, "modified"), withinPercentage(1e-8));
    assertThat(test.p()).isCloseTo(number(row, "pAnderson"), withinPercentage(1e-7));
  }

  /** D'Agostino and Stephens (1986), table 4.7, as far as the pieces of table 4.9 meet it. */
  @ParameterizedTest
  @CsvSource({"0.1, 0.631", "0.05, 0.752", "0.025, 0.873", "0.01, 1.035", "0.005, 1.159"})
  void criticalValuesHaveTheirProbability(double level, double critical) {
    assertThat(AndersonDarling.probability(critical)).isCloseTo(level, withinPercentage(1.5));
  }

  @Test
  void probabilitiesOnlyFallWithTheStatistic() {
    double last = 1;
    for (double a = 0; a < 400; a += 0.01) {
      double p = AndersonDarling.probability(a);
      assertThat(p).as("A squared %s", a).isBetween(0.0, last + 0.005);
      last = p;
    }
  }

  /** The library states W to 7 digits; the weights are polynomials of AS R94 in both. */
  @ParameterizedTest
  @MethodSource("sets")
  void shapiroWilkAgreesWithAGeneralPurposeLibrary(Map<String, String> row) {
    ShapiroWilk test = ShapiroWilk.of(sample(row.get("set")));

    assertThat(test.w()).isCloseTo(number(row, "w"), within(2e-8));
    assertThat(test.p()).isCloseTo(number(row, "pShapiro"), within(2e-7));
  }

  /** Shapiro and Wilk (1965), their example of eleven men's weights. */
  @Test
  void thePublishedExampleIsMet() {
    assertThat(ShapiroWilk.of(sample("men-weights")).w()).isCloseTo(0.79, within(0.005));
  }

  /** For three numbers W has a closed distribution: evenly spaced ones are as normal as can be. */
  @Test
  void threeEvenlySpacedNumbersAreCertainlyNormal() {
    ShapiroWilk test = ShapiroWilk.of(new double[] {3, 1, 2});

    assertThat(test.w()).isCloseTo(1, within(1e-15));
    assertThat(test.p()).isCloseTo(1, within(1e-7));
  }

  /** Of normal samples, 5 % are called not normal; 4000 samples of 20 from a fixed seed. */
  @Test
  void bothTestsKeepTheirLevel() {
    long seed = 1986;
    Random random = new Random(seed);
    int anderson = 0;
    int shapiro = 0;
    int samples = 4000;
    for (int i = 0; i < samples; i++) {
      double[] sample = random.doubles(20).map(u -> 7 + 3 * random.nextGaussian()).toArray();
      anderson += AndersonDarling.of(sample).p() < 0.05 ? 1 : 0;
      shapiro += ShapiroWilk.of(sample).p() < 0.05 ? 1 : 0;
    }
    double fourStandardErrors = 4 * Math.sqrt(0.05 * 0.95 / samples);

    assertThat(anderson / (double) samples)
        .as("seed %d", seed)
        .isCloseTo(0.05, within(fourStandardErrors));
    assertThat(shapiro / (double) samples)
        .as("seed %d", seed)
        .isCloseTo(0.05, within(fourStandardErrors));
  }

  @Test
  void tooFewOrEqualNumbersAreRefused() {
    double[] equal = new double[30];

    assertThatThrownBy(() -> AndersonDarling.of(equal))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("8 numbers or more");
    assertThatThrownBy(() -> AndersonDarling.of(new double[] {1, 2, 3, 4, 5, 6, 7}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> ShapiroWilk.of(equal)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> ShapiroWilk.of(new double[] {1, 2}))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("3 to 5000");
  }
}
