package dev.filmward.rule.price;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.chart.ChartKind;
import dev.filmward.rule.SeriesTests;
import dev.filmward.rule.SignalTest;
import dev.filmward.rule.TestSet;
import dev.filmward.stats.Figures;
import dev.filmward.stats.Moments;
import dev.filmward.stats.Normal;
import java.util.EnumSet;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class TestRunLengthTest {

  static Stream<Map<String, String>> exactValues() {
    return Figures.table(TestRunLengthTest.class, "zone-tests.csv").stream();
  }

  static Stream<Map<String, String>> printedValues() {
    return Figures.table(SeriesTests.class, "run-lengths.csv").stream();
  }

  /** Tests by their numbers in the Western Electric handbook, and 5 to 8 for the patterns. */
  private static Set<SignalTest> tests(String numbers) {
    Set<SignalTest> tests = EnumSet.noneOf(SignalTest.class);
    numbers.chars().forEach(number -> tests.add(SignalTest.values()[number - '1']));
    return tests;
  }

  private static double number(Map<String, String> row, String heading) {
    return Double.parseDouble(row.get(heading));
  }

  @ParameterizedTest
  @MethodSource("exactValues")
  void zoneTestsAgreeWithAnotherChain(Map<String, String> row) {
    RunLength length = TestRunLength.of(tests(row.get("tests")), number(row, "shift"));
    double average = number(row, "average");
    double deviation = number(row, "deviation");

    assertThat(length.mean()).isCloseTo(average, within(1e-11 * average));
    assertThat(length.standardDeviation()).isCloseTo(deviation, within(1e-10 * deviation));
  }

  /** Champ and Woodall (1987), table 1, to its printed digits. */
  @ParameterizedTest
  @MethodSource("printedValues")
  void thePrintedTableIsMet(Map<String, String> row) {
    for (String tests : new String[] {"1", "12", "13", "14", "1234"}) {
      assertThat(TestRunLength.of(tests(tests), number(row, "shift")).mean())
          .as("tests %s", tests)
          .isCloseTo(number(row, tests), within(0.0052));
    }
  }

  @Test
  void aChartInControlWithAllFourZoneTestsAlarmsAfterNinetyTwoPoints() {
    assertThat(TestRunLength.of(TestSet.STANDARD.onMeans(), 0).mean())
        .isCloseTo(91.75, within(0.005));
  }

  /** Orders of six points are 720, of which two are in trend. */
  @Test
  void trendsAreCountedByPermutations() {
    RunLength length = TestRunLength.of(tests("5"), 0);

    assertThat(length.signalledWithin(5)).isCloseTo(0, within(1e-14));
    assertThat(length.signalledWithin(6)).isCloseTo(2 / 720.0, within(1e-14));
    for (int n = 7; n <= 9; n++) {
      assertThat(length.signalledWithin(n)).isCloseTo(Permutations.withTrend(n), within(1e-13));
    }
  }

  /** Of the 14! orders of 14 points, 2 E(14) go up and down in turn; E(14) = 199 360 981. */
  @Test
  void alternationsAreCountedByTheZigzagNumbers() {
    RunLength length = TestRunLength.of(tests("8"), 0);

    assertThat(length.signalledWithin(13)).isCloseTo(0, within(1e-13));
    assertThat(length.signalledWithin(14))
        .isCloseTo(2 * 199_360_981.0 / 87_178_291_200.0, within(1e-13));
  }

  @Test
  void whatComparesPointsDoesNotDependOnAShift() {
    assertThat(TestRunLength.of(tests("58"), 1.7).mean())
        .isCloseTo(TestRunLength.of(tests("58"), 0).mean(), within(1e-9));
  }

  /** Fifteen points in a row within one sigma; eight outside. */
  @Test
  void runsOfNearAndOfFarPointsAreSignalledWithTheirPowers() {
    double far = 2 * Normal.STANDARD.above(1);

    assertThat(TestRunLength.of(tests("6"), 0).signalledWithin(15))
        .isCloseTo(Math.pow(1 - far, 15), within(1e-14));
    assertThat(TestRunLength.of(tests("7"), 0).signalledWithin(8))
        .isCloseTo(Math.pow(far, 8), within(1e-14));
  }

  /** The tests as they run on charts, simulated from a fixed seed, within four standard errors. */
  @ParameterizedTest
  @CsvSource({"12345678, 0", "12345678, 0.5", "15, 0", "18, 1", "2568, -1.5"})
  void anyChoiceOfTestsAgreesWithSimulation(String numbers, double shift) {
    long seed = 1984;
    Random random = new Random(seed);
    Moments lengths = new Moments();
    TestSet set = new TestSet(tests(numbers), Set.of());
    for (int run = 0; run < 10_000; run++) {
      SeriesTests tests = new SeriesTests(set, ChartKind.RANGE);
      int points = 1;
      while (tests.next(random.nextGaussian() + shift) == 0) {
        points++;
      }
      lengths.add(points);
    }
    double standardError = lengths.standardDeviation().orElseThrow() / 100;
    RunLength exact = TestRunLength.of(tests(numbers), shift);

    assertThat(exact.mean())
        .as("seed %d", seed)
        .isCloseTo(lengths.mean(), within(4 * standardError));
    assertThat(exact.standardDeviation())
        .isCloseTo(100 * standardError, within(0.04 * 100 * standardError));
  }

  @Test
  void withoutATestOrAShiftThereIsNoRunLength() {
    assertThatThrownBy(() -> TestRunLength.of(Set.of(), 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> TestRunLength.of(tests("1"), Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
