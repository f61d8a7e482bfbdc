package dev.filmward.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.chart.ChartKind;
import dev.filmward.rule.Side;
import dev.filmward.rule.Signal;
import dev.filmward.rule.SignalTest;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DeviationTest {
  @ParameterizedTest(name = "{0} {1} {2} says {3}")
  @CsvSource({
    "XBAR, BEYOND_LIMIT, HIGH, THICKER",
    "XBAR, EIGHT_IN_A_ROW, LOW, THINNER",
    "XBAR, TREND, LOW, THINNER",
    "XBAR, STRATIFICATION, LOW, PATTERN",
    "XBAR, MIXTURE, HIGH, PATTERN",
    "XBAR, ALTERNATION, HIGH, PATTERN",
    "EWMA, BEYOND_LIMIT, HIGH, THICKER",
    "EWMA, BEYOND_LIMIT, LOW, THINNER",
    "CUSUM, BEYOND_LIMIT, LOW, THINNER",
    "RANGE, BEYOND_LIMIT, HIGH, SPREAD",
    "RANGE, BEYOND_LIMIT, LOW,",
    "DEVIATION, BEYOND_LIMIT, HIGH, SPREAD",
    "MOVING_RANGE, BEYOND_LIMIT, HIGH, PATTERN",
    "T_SQUARED, BEYOND_LIMIT, HIGH,"
  })
  void aSignalSaysInWhichWayALayerIsUnlikeItself(
      ChartKind chart, SignalTest test, Side side, Deviation says) {
    assertThat(Deviation.of(new Signal(chart, test, side))).isEqualTo(Optional.ofNullable(says));
  }
}
