package dev.filmward.rule.price;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.chart.Cusum;
import dev.filmward.chart.CusumDesign;
import dev.filmward.chart.CusumPoint;
import dev.filmward.chart.Ewma;
import dev.filmward.chart.EwmaDesign;
import dev.filmward.rule.SignalTest;
import dev.filmward.rule.TestSet;
import dev.filmward.stats.Figures;
import dev.filmward.stats.Moments;
import dev.filmward.stats.Normal;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class RunLengthsTest {

  static Stream<Map<String, String>> cusums() {
    return Figures.table(RunLengthsTest.class, "cusum.csv").stream();
  }

  static Stream<Map<String, String>> ewmas() {
    return Figures.table(RunLengthsTest.class, "ewma.csv").stream();
  }

  private static double number(Map<String, String> row, String heading) {
    return Double.parseDouble(row.get(heading));
  }

  private static EwmaDesign ewma(double lambda, double reach) {
    return new EwmaDesign(lambda, reach, EwmaDesign.Limits.ASYMPTOTIC);
  }

  @ParameterizedTest
  @MethodSource("cusums")
  void cumulativeSumsAgreeWithTheTables(Map<String, String> row) {
    double h = number(row, "h");
    double shift = number(row, "shift");
    CusumDesign design = CusumDesign.of(0.5, h);
    double twoSided = CusumRunLength.twoSidedMean(design, shift);

    assertThat(twoSided).isCloseTo(number(row, "printed"), within(0.0055 * twoSided));
    assertThat(twoSided).isCloseTo(number(row, "twoSided"), within(1e-10 * twoSided));
    assertMean(CusumRunLength.high(design, shift), number(row, "oneSided"));
    assertMean(
        CusumRunLength.high(new CusumDesign(0.5, h, h / 2), shift), number(row, "headStart"));
  }

  private static void assertMean(RunLength length, double expected) {
    assertThat(length.mean()).isCloseTo(expected, within(1e-10 * expected));
  }

  /**
   * Limits for a run length of 370 (D. M. Hawkins 1993, as printed by Montgomery), and to more
   * digits by another computation.
   */
  @ParameterizedTest
  @CsvSource({
    "0.25, 8.01, 8.008288714957336",
    "0.5, 4.77, 4.773833708253149",
    "0.75, 3.34, 3.3389733691293007",
    "1, 2.52, 2.5162601013032733",
    "1.25, 1.99, 1.9862242668287464",
    "1.5, 1.61, 1.6040994149835766"
  })
  void limitsForARunLengthOf370AreMet(double allowance, double printed, double exact) {
    assertThat(CusumRunLength.twoSidedMean(CusumDesign.of(allowance, exact), 0))
        .isCloseTo(370, within(1e-7));
    assertThat(CusumRunLength.twoSidedMean(CusumDesign.of(allowance, printed), 0))
        .isCloseTo(370, within(7.0));
  }

  /** Lucas and Crosier (1982): both sums with a head start, simulated from a fixed seed. */
  @Test
  void twoSumsWithAHeadStartAgreeWithSimulation() {
    long seed = 1982;
    Random random = new Random(seed);
    CusumDesign design = new CusumDesign(0.5, 4, 2);
    Moments lengths = new Moments();
    for (int run = 0; run < 10_000; run++) {
      Cusum cusum = new Cusum(design);
      int points = 0;
      CusumPoint point;
      do {
        point = cusum.next(random.nextGaussian() + 0.3);
        points++;
      } while (!point.isHigh() && !point.isLow());
      lengths.add(points);
    }
    double standardError = lengths.standardDeviation().orElseThrow() / 100;

    assertThat(CusumRunLength.twoSidedMean(design, 0.3))
        .as("seed %d", seed)
        .isCloseTo(lengths.mean(), within(4 * standardError));
  }

  /** The opposite sum does not signal within what a double can tell. */
  @Test
  void aSumThatNeverSignalsIsEndless() {
    RunLength length = CusumRunLength.high(CusumDesign.of(0.5, 5), -4);

    assertThat(length.mean()).isInfinite();
    assertThat(length.standardDeviation()).isInfinite();
    assertThat(length.pointsFor(0.5)).isEqualTo(Long.MAX_VALUE);
  }

  @ParameterizedTest
  @MethodSource("ewmas")
  void movingAveragesAgreeWithTheTables(Map<String, String> row) {
    RunLength length =
        EwmaRunLength.of(ewma(number(row, "lambda"), number(row, "reach")), number(row, "shift"));

    assertMean(length, number(row, "average"));
    if (!row.get("printed").isEmpty()) {
      double printed = number(row, "printed");
      double rounding = printed >= 100 ? 0.5 : 0.05;
      assertThat(length.mean()).isCloseTo(printed, within(rounding + 0.0025 * printed));
    }
  }

  /** Without memory it is a chart of single points. */
  @Test
  void aMovingAverageOfOnePointIsThatPoint() {
    assertMean(EwmaRunLength.of(ewma(1, 3), 0), 1 / (2 * Normal.STANDARD.above(3)));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.5, 1.5})
  void aMovingAverageWithALimitForPointsAgreesWithSimulation(double shift) {
    long seed = 1990;
    Random random = new Random(seed);
    EwmaDesign design = ewma(0.2, 2.86);
    Moments lengths = new Moments();
    for (int run = 0; run < 10_000; run++) {
      Ewma ewma = new Ewma(design);
      int points = 0;
      boolean signalled = false;
      while (!signalled) {
        double z = random.nextGaussian() + shift;
        signalled = Math.abs(ewma.advance(z)) > 1 || Math.abs(z) > 3;
        points++;
      }
      lengths.add(points);
    }
    double standardError = lengths.standardDeviation().orElseThrow() / 100;
    RunLength exact = EwmaRunLength.withPointLimit(design, 3, shift);

    assertThat(exact.mean())
        .as("seed %d", seed)
        .isCloseTo(lengths.mean(), within(4 * standardError));
  }

  @Test
  void withALimitForPointsThatIsFarOffItIsTheAverageAlone() {
    assertMean(
        EwmaRunLength.withPointLimit(ewma(0.1, 2.7), 8.2, 0),
        EwmaRunLength.of(ewma(0.1, 2.7), 0).mean());
  }

  /** Mean 1/p, variance (1 - p)/p^2; half have signalled within ln 2 / -ln(1 - p). */
  @Test
  void independentPointsHaveAGeometricRunLength() {
    RunLength length = RunLength.geometric(0.01);

    assertThat(length.mean()).isCloseTo(100, within(1e-11));
    assertThat(length.standardDeviation()).isCloseTo(Math.sqrt(0.99) / 0.01, within(1e-10));
    assertThat(length.signalledWithin(3)).isCloseTo(1 - Math.pow(0.99, 3), within(1e-15));
    assertThat(length.pointsFor(0.5)).isEqualTo(69);
    assertThat(RunLength.geometric(1).mean()).isEqualTo(1);
  }

  /** Until there is a signal on either of two charts: 1 - (1 - p)(1 - q). */
  @Test
  void independentChartsMultiplyTheirSurvival() {
    RunLength either = RunLength.geometric(0.01).orOf(RunLength.geometric(0.02));

    assertThat(either.mean()).isCloseTo(1 / (1 - 0.99 * 0.98), within(1e-11));
    assertThat(RunLength.geometric(0.01).ofFirstAmong(4).mean())
        .isCloseTo(1 / (1 - Math.pow(0.99, 4)), within(1e-11));
    assertThat(RunLength.endless().orOf(RunLength.geometric(0.01)).mean())
        .isCloseTo(100, within(1e-11));
  }

  @Test
  void aChainThatForgetsHasItsGeometricTailSummedUp() {
    RunLength zones = TestRunLength.of(TestSet.STANDARD.onMeans(), 0);

    assertThat(zones.orOf(zones).mean()).isCloseTo(zones.ofFirstAmong(2).mean(), within(1e-10));
    assertThat(zones.signalledWithin((int) zones.pointsFor(0.9))).isGreaterThanOrEqualTo(0.9);
    assertThat(zones.signalledWithin((int) zones.pointsFor(0.9) - 1)).isLessThan(0.9);
    assertThat(zones.signalledWithin((int) zones.pointsFor(0.02))).isGreaterThanOrEqualTo(0.02);
  }

  @Test
  void whatIsNoProbabilityOrFamilyIsRefused() {
    RunLength length = RunLength.geometric(0.5);

    assertThatThrownBy(() -> RunLength.geometric(0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> length.pointsFor(1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> length.ofFirstAmong(0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> EwmaRunLength.withPointLimit(ewma(0.2, 3), 0, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Phi(-3 + d) + Phi(-3 - d) a point; NIST/SEMATECH e-Handbook 6.3.2.3.1 rounds the same. */
  @ParameterizedTest
  @CsvSource({
    "0.25, 281.15252356776614",
    "0.5, 155.2242007526254",
    "0.75, 81.21570198816067",
    "1.5, 14.967685005613903",
    "2.5, 3.2410965050871763",
    "4, 1.188573417343252"
  })
  void limitsOfThreeSigmaHaveTheirKnownRunLengths(double shift, double expected) {
    assertMean(TestRunLength.of(Set.of(SignalTest.BEYOND_LIMIT), shift), expected);
  }
}
