package dev.filmward.rule;

import static dev.filmward.chart.ChartKind.CUSUM;
import static dev.filmward.chart.ChartKind.EWMA;
import static dev.filmward.chart.ChartKind.RANGE;
import static dev.filmward.chart.ChartKind.XBAR;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class SignalsTest {

  @Test
  void signalsAreOrderedByChartThenTestThenSide() {
    List<Signal> ordered =
        List.of(
            new Signal(XBAR, SignalTest.BEYOND_LIMIT, Side.HIGH),
            new Signal(XBAR, SignalTest.BEYOND_LIMIT, Side.LOW),
            new Signal(XBAR, SignalTest.TWO_OF_THREE, Side.HIGH),
            new Signal(XBAR, SignalTest.FOUR_OF_FIVE, Side.LOW),
            new Signal(XBAR, SignalTest.EIGHT_IN_A_ROW, Side.HIGH),
            new Signal(RANGE, SignalTest.BEYOND_LIMIT, Side.HIGH));

    assertThat(ordered).isSorted();
    assertThat(Signal.decode(ordered.stream().mapToInt(Signal::bit).sum())).isEqualTo(ordered);
  }

  @Test
  void anEmptySetIsTheSharedEmptyList() {
    assertThat(Signal.decode(0)).isSameAs(List.of());
  }

  @Test
  void bitsThatAreNoSignalAreRefused() {
    assertThatThrownBy(() -> Signal.decode(-1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Signal.decode(1 << 28)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void testsAndSidesAreKnownByTheirWords() {
    assertThat(Stream.of(SignalTest.values()).map(SignalTest::word))
        .containsExactly(
            "beyond-limit",
            "two-of-three",
            "four-of-five",
            "eight-in-a-row",
            "trend",
            "stratification",
            "mixture",
            "alternation");
    assertThat(Stream.of(SignalTest.values()).map(test -> SignalTest.fromWord(test.word())))
        .containsExactly(SignalTest.values());
    assertThat(Side.fromWord("high")).isEqualTo(Side.HIGH);
    assertThat(Side.fromWord("low").word()).isEqualTo("low");
  }

  @Test
  void anUnknownWordIsAnsweredWithTheKnownOnes() {
    assertThatThrownBy(() -> SignalTest.fromWord("nine-in-a-row"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "no test \"nine-in-a-row\"; the tests are beyond-limit, two-of-three, four-of-five,"
                + " eight-in-a-row, trend, stratification, mixture, alternation");
    assertThatThrownBy(() -> Side.fromWord("left"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("no side \"left\"; high or low");
  }

  @Test
  void otherChartsThanThatOfMeansHaveOneTest() {
    assertThatThrownBy(() -> new Signal(RANGE, SignalTest.TREND, Side.HIGH))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("trend is of the mean chart only");
  }

  @Test
  void aValueBeyondItsLimitIsASignalOnItsSide() {
    assertThat(Signal.decode(Signal.beyond(EWMA, 1.1, 1)))
        .containsExactly(new Signal(EWMA, SignalTest.BEYOND_LIMIT, Side.HIGH));
    assertThat(Signal.decode(Signal.beyond(CUSUM, -5.2, 5)))
        .containsExactly(new Signal(CUSUM, SignalTest.BEYOND_LIMIT, Side.LOW));
    assertThat(Signal.beyond(EWMA, -1, 1)).isZero();
    assertThatThrownBy(() -> Signal.beyond(EWMA, Double.NaN, 1))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void everySignalHasABitOfItsOwn() {
    int every = (1 << 28) - 1;

    assertThat(Signal.decode(every)).hasSize(28).isSorted().doesNotHaveDuplicates();
  }
}
