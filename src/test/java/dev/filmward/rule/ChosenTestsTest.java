package dev.filmward.rule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.filmward.chart.ChartKind;
import dev.filmward.chart.LimitsVersion.Decision;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ChosenTestsTest {
  private static final Instant NOON = Instant.parse("2026-11-20T12:00:00Z");
  private static final TestChoice LIMITS = new TestChoice(TestSet.STANDARD, TestSet.LIMITS_ONLY);
  private static final TestChoice WITH_AVERAGE =
      new TestChoice(TestSet.STANDARD.withAverage(), TestSet.LIMITS_ONLY.withAverage());

  @Test
  void eachMomentHasTheChoiceThatWasInForceThen() {
    ChosenTests tests =
        new ChosenTests(
            List.of(version(1, LIMITS, NOON), version(2, WITH_AVERAGE, NOON.plusSeconds(60))));
    assertThat(tests.at(NOON.minusNanos(1000), 1)).isEqualTo(TestChoice.STANDARD);
    assertThat(tests.at(NOON, 1)).isEqualTo(LIMITS);
    assertThat(tests.at(NOON.plusSeconds(59), 1)).isEqualTo(LIMITS);
    assertThat(tests.at(NOON.plusSeconds(60), 1)).isEqualTo(WITH_AVERAGE);
    assertThat(tests.at(NOON.plusSeconds(60), 2)).isEqualTo(TestChoice.STANDARD);
    assertThat(tests.newest(1)).isEqualTo(WITH_AVERAGE);
    assertThat(tests.newestAlways().at(NOON.minusSeconds(60), 1)).isEqualTo(WITH_AVERAGE);
  }

  @Test
  void goesBackAsFarAsTheChosenTestsRemember() {
    ChosenTests tests = new ChosenTests(List.of(version(1, WITH_AVERAGE, NOON)));
    assertThat(tests.warmUp(2)).isEqualTo(7);
    // what an average of weight 0.2 keeps of a point after so many others, beside a double's 1e-16
    assertThat(Math.pow(0.8, tests.warmUp(1))).isLessThan(1e-18);
  }

  @Test
  void anAlarmingTestIsShown() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new TestChoice(TestSet.LIMITS_ONLY, TestSet.STANDARD))
        .withMessageContaining("shown");
  }

  @Test
  void aChoiceKeepsTheSignalsOfItsTests() {
    Signal run = new Signal(ChartKind.XBAR, SignalTest.EIGHT_IN_A_ROW, Side.LOW);
    Signal beyond = new Signal(ChartKind.XBAR, SignalTest.BEYOND_LIMIT, Side.LOW);
    Signal average = new Signal(ChartKind.EWMA, SignalTest.BEYOND_LIMIT, Side.LOW);
    Signal range = new Signal(ChartKind.RANGE, SignalTest.BEYOND_LIMIT, Side.HIGH);
    List<Signal> all = List.of(beyond, run, range, average);
    assertThat(LIMITS.shown(all)).containsExactly(beyond, run, range);
    assertThat(LIMITS.alarming(all)).containsExactly(beyond, range);
    assertThat(WITH_AVERAGE.alarming(all)).containsExactly(beyond, range, average);
    TestSet rangesOnly = new TestSet(Set.of(), Set.of(SignalTest.BEYOND_LIMIT));
    assertThat(new TestChoice(TestSet.STANDARD, rangesOnly).alarming(all)).containsExactly(range);
  }

  /** 1 sigma again and again: the average is 1 - 0.8^n, its limit 2.86 / 3. */
  @Test
  void theMovingAverageIsBeyondItsLimitWhenItIsCountedOutSo() {
    SeriesTests tests =
        new SeriesTests(new TestSet(Set.of(), Set.of()).withAverage(), ChartKind.RANGE);
    for (int n = 1; n <= 30; n++) {
      boolean beyond = 1 - Math.pow(0.8, n) > 2.86 / 3;
      assertThat(Signal.decode(tests.next(1.0)))
          .as("after %d means", n)
          .hasSize(beyond ? 1 : 0)
          .allMatch(signal -> signal.chart() == ChartKind.EWMA && signal.side() == Side.HIGH);
    }
  }

  @Test
  void infinitelyFarOffMeansDoNotSpoilTheMovingAverage() {
    SeriesTests tests =
        new SeriesTests(new TestSet(Set.of(), Set.of()).withAverage(), ChartKind.RANGE);
    assertThat(Signal.decode(tests.next(Double.POSITIVE_INFINITY))).hasSize(1);
    assertThat(Signal.decode(tests.next(Double.NEGATIVE_INFINITY)))
        .singleElement()
        .matches(signal -> signal.side() == Side.LOW);
  }

  private static TestsVersion version(int number, TestChoice choice, Instant from) {
    return new TestsVersion(
        number, Map.of(1, choice), AlarmDelays.STANDARD, from, new Decision("Kim", "why", from));
  }
}
