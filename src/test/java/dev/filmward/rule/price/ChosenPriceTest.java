package dev.filmward.rule.price;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.rule.SignalTest;
import dev.filmward.rule.TestSet;
import java.time.Duration;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ChosenPriceTest {
  private static final SamplingPlan HALF_HOURLY =
      new SamplingPlan(Duration.ofMinutes(30), Duration.ofHours(8));
  private static final TestSet ZONES_WITHOUT_RANGE =
      new TestSet(TestSet.STANDARD.onMeans(), Set.of());
  private static final TestSet NO_TEST = new TestSet(Set.of(), Set.of());

  private final RunLengthBook book = new RunLengthBook();

  /** Champ and Woodall (1987): 91.75 means between false alarms of the four zone tests. */
  @Test
  void oneChartHasThePublishedRunLength() {
    ChosenPrice price = price(List.of(ZONES_WITHOUT_RANGE));
    assertThat(price.line().samplesToFalseAlarm()).isCloseTo(91.75, within(0.005));
    assertThat(price.line().falseAlarmsPerShift()).isCloseTo(16 / 91.75, within(1e-4));
    assertThat(price.exact()).isEqualTo(ChosenPrice.Exactness.EXACT);
  }

  @Test
  void theSameTestsEverywhereCostWhatThePriceListSays() {
    Price expected = new PriceList(new ChartedLine(4, 5), HALF_HOURLY).of(TestSet.STANDARD);
    Price line = price(Collections.nCopies(4, TestSet.STANDARD)).line();
    assertThat(line.samplesToFalseAlarm()).isCloseTo(expected.samplesToFalseAlarm(), within(1e-9));
    assertThat(line.samplesToSeeOneSigma()).isEqualTo(expected.samplesToSeeOneSigma());
  }

  /** Single points: of 1000 means 2.7 are beyond a limit, on either of two charts 5.4 less both. */
  @Test
  void choicesThatDifferAddUp() {
    TestSet limit = new TestSet(Set.of(SignalTest.BEYOND_LIMIT), Set.of());
    double p = 0.0026997960632601866;
    assertThat(price(List.of(limit, NO_TEST)).line().samplesToFalseAlarm())
        .isCloseTo(1 / p, within(1e-6));
    assertThat(price(List.of(limit, limit)).line().samplesToFalseAlarm())
        .isCloseTo(1 / (2 * p - p * p), within(1e-6));
    ChosenPrice mixed = price(List.of(limit, ZONES_WITHOUT_RANGE));
    assertThat(mixed.characteristics().get(1).samplesToFalseAlarm())
        .isCloseTo(91.75, within(0.005));
    assertThat(mixed.line().samplesToSeeOneSigma())
        .isEqualTo(mixed.characteristics().get(0).samplesToSeeOneSigma());
  }

  /** Lucas and Saccucci (1990) print 9.8 means for a shift of one sigma at 370 in control. */
  @Test
  void theMovingAverageSeesAShiftAsSoonAsTheZoneTestsAtAQuarterOfTheFalseAlarms() {
    ChosenPrice average = price(List.of(NO_TEST.withAverage()));
    assertThat(average.line().samplesToFalseAlarm()).isCloseTo(371, within(2.0));
    assertThat(average.line().samplesToSeeOneSigma()).isCloseTo(9.8, within(0.1));
  }

  @Test
  void zoneTestsWithAMovingAverageHaveABound() {
    ChosenPrice both = price(List.of(ZONES_WITHOUT_RANGE.withAverage()));
    assertThat(both.exact()).isEqualTo(ChosenPrice.Exactness.AT_MOST);
    double rate = 1 / 91.75 + 1 / 371.0;
    assertThat(both.line().samplesToFalseAlarm()).isBetween(1 / rate, 91.75);
    assertThat(both.line().samplesToSeeOneSigma()).isLessThan(9.8);
  }

  @Test
  void withoutTestsThereIsNoFalseAlarmAndNothingIsSeen() {
    Price none = price(List.of(NO_TEST)).line();
    assertThat(none.falseAlarmsPerShift()).isZero();
    assertThat(none.samplesToFalseAlarm()).isInfinite();
    assertThat(none.samplesToSeeOneSigma()).isInfinite();
  }

  private ChosenPrice price(List<TestSet> tests) {
    return ChosenPrice.of(tests, 5, HALF_HOURLY, book);
  }
}
