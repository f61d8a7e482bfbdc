package dev.filmward.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.filmward.chart.ChartKind;
import dev.filmward.rule.AlarmDelays;
import dev.filmward.rule.AlarmDelays.Delay;
import dev.filmward.rule.ChartTest;
import dev.filmward.rule.Side;
import dev.filmward.rule.Signal;
import dev.filmward.rule.SignalTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** In the tables, B beyond the lower limit, R a run below, T beyond the upper limit, - nothing. */
class HeardTest {
  private static final Signal BEYOND = signal(SignalTest.BEYOND_LIMIT, Side.LOW);
  private static final Signal RUN = signal(SignalTest.EIGHT_IN_A_ROW, Side.LOW);

  /** Oldest first; the last one is this sample. */
  @ParameterizedTest(name = "{0}: opens {1}")
  @CsvSource({
    "B,    true",
    "R,    false",
    "RR,   false",
    "RRR,  true",
    "BRR,  true",
    "R-RR, false",
    "TRR,  false",
    "RRB,  true",
    "RR-,  false"
  })
  void aTestOpensAfterItsOwnNumberOfSamplesInARow(String samples, boolean opens) {
    AlarmDelays delays =
        new AlarmDelays(Map.of(test(BEYOND), new Delay(1, 1), test(RUN), new Delay(3, 1)));
    assertThat(new Heard(newestFirst(samples), delays).opens(Deviation.THINNER)).isEqualTo(opens);
  }

  @ParameterizedTest(name = "{0}: goes on {1}")
  @CsvSource({
    "B,     true",
    "B-,    false",
    "R,     true",
    "R-,    true",
    "R--,   true",
    "R---,  false",
    "RB---, false",
    "BR--,  true",
    "RT--,  false",
    "T,     false"
  })
  void anAlarmReturnsWhenEachTestHasBeenSilentForItsOwnNumberOfSamples(
      String samples, boolean goesOn) {
    AlarmDelays delays = new AlarmDelays(Map.of(test(RUN), new Delay(2, 3)));
    assertThat(new Heard(newestFirst(samples), delays).goesOn(Deviation.THINNER)).isEqualTo(goesOn);
  }

  @Test
  void delaysAreOneToEightSamples() {
    assertThatIllegalArgumentException().isThrownBy(() -> new Delay(0, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new Delay(1, 9));
    assertThat(AlarmDelays.STANDARD.of(RUN)).isEqualTo(new Delay(2, 1));
    assertThat(new AlarmDelays(Map.of(test(RUN), new Delay(2, 8))).earlierSamples()).isEqualTo(7);
  }

  private static List<List<Signal>> newestFirst(String samples) {
    List<List<Signal>> recent = new ArrayList<>();
    for (char sample : samples.toCharArray()) {
      recent.add(0, signals(sample));
    }
    return recent;
  }

  private static List<Signal> signals(char sample) {
    return switch (sample) {
      case 'B' -> List.of(BEYOND);
      case 'R' -> List.of(RUN);
      case 'T' -> List.of(signal(SignalTest.BEYOND_LIMIT, Side.HIGH));
      default -> List.of();
    };
  }

  private static Signal signal(SignalTest test, Side side) {
    return new Signal(ChartKind.XBAR, test, side);
  }

  private static ChartTest test(Signal signal) {
    return ChartTest.of(signal);
  }
}
