package dev.filmward.rule.price;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.filmward.chart.ChartKind;
import dev.filmward.chart.EwmaDesign;
import dev.filmward.rule.SignalTest;
import dev.filmward.rule.TestSet;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PriceListTest {
  private static final SamplingPlan HALF_HOURLY =
      new SamplingPlan(Duration.ofMinutes(30), Duration.ofHours(8));

  /** P(chi-square of n - 1 beyond the limits of s), by a general-purpose library. */
  @ParameterizedTest
  @CsvSource({
    "2, 0.009152214650465373",
    "3, 0.005627501354868551",
    "5, 0.0038991144783974588",
    "6, 0.003547620073699332",
    "10, 0.0029993566720093795",
    "20, 0.0027927250813913904"
  })
  void deviationsAlarmFalselyAsOftenAsChiSquareSays(int size, double p) {
    assertThat(SpreadSignal.ofDeviation(size, 1)).isCloseTo(p, within(1e-11));
  }

  /** The range of two is sqrt(2) times their deviation, so both charts are the same. */
  @ParameterizedTest
  @ValueSource(doubles = {0.8, 1, 1.5, 3})
  void theRangeAndTheDeviationOfTwoAlarmTogether(double ratio) {
    double deviation = SpreadSignal.ofDeviation(2, ratio);

    assertThat(SpreadSignal.ofRange(2, ratio)).isCloseTo(deviation, within(1e-10 * deviation));
  }

  /** Tippett's integral by multiple-precision quadrature (mpmath), limits with exact d2 and d3. */
  @Test
  void rangesOfFiveAlarmFalselyOnceInTwoHundredAndSeventeen() {
    assertThat(SpreadSignal.ofRange(5, 1)).isCloseTo(0.00460304843248, within(1e-11));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
  void whatIsNoRatioIsRefused(double ratio) {
    assertThatThrownBy(() -> SpreadSignal.ofRange(5, ratio))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> SpreadSignal.ofDeviation(5, ratio))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** 1 - (1 - p)^k = 1/370.4 for the first; simulated apart from this project for the second. */
  @ParameterizedTest
  @CsvSource({"3, 3.32, 3.22", "4, 3.40, ", "6, 3.51, 3.43", "8, 3.58, 3.51"})
  void familyLimitsAreMet(int charts, double points, Double ewma) {
    assertThat(FamilyLimits.ofPoints(charts, FamilyLimits.OF_THREE_SIGMA))
        .isCloseTo(points, within(0.005));
    if (ewma != null) {
      assertThat(FamilyLimits.ofEwma(0.2, charts, 370).reach()).isCloseTo(ewma, within(0.01));
    }
  }

  /** Samples to see a shift in one of six charts, simulated apart from this project. */
  @ParameterizedTest
  @CsvSource({"0.5, 88", "1, 15", "1.5, 6.9", "2, 4.5"})
  void familyLimitsOfMovingAveragesSeeAShiftAsSoonAsSimulated(double shift, double samples) {
    EwmaDesign ofSix = new EwmaDesign(0.2, 3.43, EwmaDesign.Limits.ASYMPTOTIC);

    assertThat(EwmaRunLength.of(ofSix, shift).mean())
        .isCloseTo(samples, withinPercentage(3 + 50 / samples));
  }

  @Test
  void aFamilyOfOneHasTheUsualLimits() {
    assertThat(FamilyLimits.ofPoints(1, FamilyLimits.OF_THREE_SIGMA)).isCloseTo(3, within(1e-12));
    assertThatThrownBy(() -> FamilyLimits.ofPoints(0, 370))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> FamilyLimits.ofEwma(0.2, 3, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Samples to the first false signal on k mean charts, simulated apart from this project. */
  @ParameterizedTest
  @CsvSource({
    "1, 1, 370",
    "1, 3, 125",
    "1, 7, 53",
    "14, 1, 153",
    "14, 5, 34",
    "12, 2, 114",
    "12, 9, 26",
    "1234, 1, 92",
    "1234, 2, 49",
    "1234, 3, 33",
    "1234, 5, 22",
    "1234, 7, 16",
    "1234, 9, 13"
  })
  void severalChartsAlarmSooner(String numbers, int charts, double samples) {
    Set<SignalTest> tests =
        numbers
            .chars()
            .mapToObj(number -> SignalTest.values()[number - '1'])
            .collect(Collectors.toSet());

    assertThat(TestRunLength.of(tests, 0).ofFirstAmong(charts).mean())
        .isCloseTo(samples, withinPercentage(3 + 50 / samples));
  }

  /** Six mean charts, 48 samples a day, limits only: 0.77 a day; the price is for a third of it. */
  @Test
  void falseAlarmsAShiftAreSamplesOverTheRunLength() {
    TestSet limitOfMeans = new TestSet(Set.of(SignalTest.BEYOND_LIMIT), Set.of());
    Price price = new PriceList(new ChartedLine(6, 5), HALF_HOURLY).of(limitOfMeans);

    assertThat(price.falseAlarmsPerShift()).isCloseTo(0.77 / 3, withinPercentage(1));
    assertThat(price.samplesToFalseAlarm()).isCloseTo(48 / 0.774, withinPercentage(0.5));
    assertThat(price.samplesToSeeOneSigma()).isCloseTo(43.89, within(0.006));
  }

  /** Independent charts: survivals multiply, those of ranges geometrically. */
  @Test
  void rangesOfAllCharacteristicsCountToo() {
    Price price = new PriceList(new ChartedLine(4, 5), HALF_HOURLY).of(TestSet.LIMITS_ONLY);
    double quiet = (1 - 1 / 370.3983473449565) * (1 - SpreadSignal.ofRange(5, 1));

    assertThat(price.samplesToFalseAlarm()).isCloseTo(1 / (1 - Math.pow(quiet, 4)), within(1e-9));
  }

  @Test
  void limitsWithAMovingAverageSeeAShiftNearlyAsSoonAtALowerPrice() {
    PriceList prices = new PriceList(new ChartedLine(5, 5), HALF_HOURLY);
    Price zones = prices.of(TestSet.STANDARD);
    Price ewma = prices.ofLimitsAnd(new EwmaDesign(0.2, 3.1, EwmaDesign.Limits.ASYMPTOTIC));

    assertThat(zones.samplesToSeeOneSigma()).isCloseTo(9.22, within(0.005));
    assertThat(ewma.samplesToSeeOneSigma()).isLessThan(11.5);
    assertThat(ewma.falseAlarmsPerShift()).isLessThan(0.65 * zones.falseAlarmsPerShift());
  }

  @Test
  void everyTestIsPricedAsDroppedOrAdded() {
    PriceList prices = new PriceList(new ChartedLine(3, 5), HALF_HOURLY);
    TestSet tests = TestSet.onMeans(SignalTest.BEYOND_LIMIT, SignalTest.EIGHT_IN_A_ROW);
    Price now = prices.of(tests);
    List<PriceChange> changes = prices.changes(tests);

    assertThat(changes).hasSize(9);
    assertThat(changes.get(3).test()).isEqualTo(SignalTest.EIGHT_IN_A_ROW);
    assertThat(changes.get(3).price()).isEqualTo(prices.of(TestSet.LIMITS_ONLY));
    assertThat(changes.get(8).chart()).isEqualTo(ChartKind.RANGE);
    for (PriceChange change : changes) {
      boolean isAdded = change.turn() == PriceChange.Turn.ADDED;
      assertThat(change.price().falseAlarmsPerShift() > now.falseAlarmsPerShift())
          .as("%s", change)
          .isEqualTo(isAdded);
      assertThat(change.price().samplesToSeeOneSigma() < now.samplesToSeeOneSigma() + 1e-9)
          .as("%s", change)
          .isEqualTo(isAdded || change.chart() == ChartKind.RANGE);
    }
  }

  @Test
  void withoutTestsThereIsNoAlarm() {
    Price price =
        new PriceList(new ChartedLine(3, 5), HALF_HOURLY).of(new TestSet(Set.of(), Set.of()));

    assertThat(price).isEqualTo(new Price(Double.POSITIVE_INFINITY, 0, Double.POSITIVE_INFINITY));
  }

  @Test
  void whatIsNoLineOrPlanIsRefused() {
    assertThatThrownBy(() -> new ChartedLine(0, 5)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new ChartedLine(3, 1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new SamplingPlan(Duration.ZERO, Duration.ofHours(8)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new SamplingPlan(Duration.ofHours(1), Duration.ofHours(-8)))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
