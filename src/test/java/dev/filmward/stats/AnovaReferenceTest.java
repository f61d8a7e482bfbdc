package dev.filmward.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** NIST Statistical Reference Datasets, analysis of variance: eleven sets, certified. */
class AnovaReferenceTest {

  static Stream<Map<String, String>> datasets() {
    return Figures.table(AnovaReferenceTest.class, "strd-anova.csv").stream();
  }

  /**
   * What rounding the file's decimals to doubles leaves: nothing is lost with up to three constant
   * leading digits, 9 digits remain with seven, 3 with thirteen. No arithmetic can mend that.
   */
  private static double tolerance(String set) {
    return switch (set) {
      case "SiRstv", "SmLs01", "SmLs02", "SmLs03" -> 1e-12;
      case "AtmWtAg", "SmLs04", "SmLs05", "SmLs06" -> 1e-8;
      default -> 5e-3;
    };
  }

  @ParameterizedTest
  @MethodSource("datasets")
  void theCertifiedValuesAreMet(Map<String, String> certified) {
    String set = certified.get("set");
    double percent = 100 * tolerance(set);
    AnovaTable table = analysis(groups(set)).table();

    assertThat(table.between().sumOfSquares())
        .isCloseTo(number(certified, "between"), withinPercentage(percent));
    assertThat(table.within().sumOfSquares())
        .isCloseTo(number(certified, "within"), withinPercentage(percent));
    assertThat(table.f()).isCloseTo(number(certified, "f"), withinPercentage(percent));
    assertThat(table.rSquared())
        .isCloseTo(number(certified, "rSquared"), withinPercentage(percent));
    assertThat(table.residualDeviation())
        .isCloseTo(number(certified, "residual"), withinPercentage(percent));
  }

  /** The same doubles in decimal arithmetic of 60 digits: here nothing may be lost. */
  @ParameterizedTest
  @MethodSource("datasets")
  void everyDigitIsThatOfExactArithmetic(Map<String, String> certified) {
    double[][] groups = groups(certified.get("set"));
    double[] all = Arrays.stream(groups).flatMapToDouble(Arrays::stream).toArray();
    BigDecimal within =
        Arrays.stream(groups)
            .map(AnovaReferenceTest::exactSquares)
            .reduce(BigDecimal.ZERO, BigDecimal::add);
    double between = exactSquares(all).subtract(within).doubleValue();
    AnovaTable table = analysis(groups).table();

    assertThat(table.between().sumOfSquares()).isCloseTo(between, within(2e-15 * between));
    assertThat(table.within().sumOfSquares())
        .isCloseTo(within.doubleValue(), within(1e-15 * within.doubleValue()));
  }

  /** Five groups of five; the tail of F beyond 1.18046237440255, computed with mpmath. */
  @Test
  void theProbabilityIsThatOfTheFDistribution() {
    AnovaTable table = analysis(groups("SiRstv")).table();

    assertThat(table.between().degrees()).isEqualTo(4);
    assertThat(table.within().degrees()).isEqualTo(20);
    assertThat(table.p()).isCloseTo(0.34944749340219272, within(1e-13));
  }

  @Test
  void analysesOfDifferentGroupsMerge() {
    double[][] groups = groups("SiRstv");
    OneWayAnova first = analysis(Arrays.copyOf(groups, 2));
    first.merge(Restored.from(analysis(Arrays.copyOfRange(groups, 2, 5))));

    assertThat(first.table()).isEqualTo(analysis(groups).table());
  }

  @Test
  void tooFewGroupsOrNumbersGiveNoTable() {
    assertThatThrownBy(() -> analysis(new double[][] {{1, 2, 3}, {}}).table())
        .isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> analysis(new double[][] {{1}, {2}}).table())
        .isInstanceOf(IllegalStateException.class);
  }

  private static double number(Map<String, String> row, String heading) {
    return Double.parseDouble(row.get(heading));
  }

  private static OneWayAnova analysis(double[][] groups) {
    OneWayAnova analysis = new OneWayAnova();
    for (double[] group : groups) {
      Moments moments = new Moments();
      Arrays.stream(group).forEach(moments::add);
      analysis.addGroup(moments);
    }
    return analysis;
  }

  private static BigDecimal exactSquares(double[] values) {
    BigDecimal sum =
        Arrays.stream(values).mapToObj(BigDecimal::new).reduce(BigDecimal.ZERO, BigDecimal::add);
    BigDecimal squares =
        Arrays.stream(values)
            .mapToObj(value -> new BigDecimal(value).pow(2))
            .reduce(BigDecimal.ZERO, BigDecimal::add);
    BigDecimal n = BigDecimal.valueOf(values.length);
    return squares.subtract(sum.pow(2).divide(n, new MathContext(80)));
  }

  private static double[][] groups(String set) {
    return set.startsWith("SmLs")
        ? simonLesage(set.charAt(5) - '0')
        : Figures.rows(AnovaReferenceTest.class, "strd-" + set.toLowerCase(Locale.ROOT) + ".csv");
  }

  /** One value f, then f - 0.1 and f + 0.1 in turn, as decimals: how the sets are made. */
  private static double[][] simonLesage(int number) {
    int size = new int[] {21, 201, 2001}[(number - 1) % 3];
    String common = new String[] {"1", "1000000", "1000000000000"}[(number - 1) / 3];
    double[][] groups = new double[9][size];
    for (int group = 0; group < 9; group++) {
      int tenth = group == 0 ? 4 : group % 2 == 1 ? 3 : 5;
      for (int i = 0; i < size; i++) {
        int digit = i == 0 ? tenth : i % 2 == 1 ? tenth - 1 : tenth + 1;
        groups[group][i] = Double.parseDouble(common + "." + digit);
      }
    }
    return groups;
  }
}
