package dev.filmward.alarm;

import static dev.filmward.alarm.AlarmState.ACKNOWLEDGED;
import static dev.filmward.alarm.AlarmState.NORMAL;
import static dev.filmward.alarm.AlarmState.RETURNED_UNACKNOWLEDGED;
import static dev.filmward.alarm.AlarmState.UNACKNOWLEDGED;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The table of IEC 62682 (figure "alarm state transition", without latching, shelving and
 * suppression), from memory: B unacknowledged, C acknowledged, D returned unacknowledged, A normal.
 */
class AlarmStateTest {
  @ParameterizedTest
  @CsvSource({
    "UNACKNOWLEDGED,          UNACKNOWLEDGED,  RETURNED_UNACKNOWLEDGED",
    "ACKNOWLEDGED,            ACKNOWLEDGED,    NORMAL",
    "RETURNED_UNACKNOWLEDGED, UNACKNOWLEDGED,  RETURNED_UNACKNOWLEDGED",
    "NORMAL,                  ACKNOWLEDGED,    NORMAL"
  })
  void movesWithTheProcess(AlarmState from, AlarmState onSignal, AlarmState onReturn) {
    assertThat(from.onSignal()).isEqualTo(onSignal);
    assertThat(from.onReturn()).isEqualTo(onReturn);
  }

  @Test
  void isAcknowledgedOnceByAPerson() {
    assertThat(UNACKNOWLEDGED.onAcknowledge()).isEqualTo(ACKNOWLEDGED);
    assertThat(RETURNED_UNACKNOWLEDGED.onAcknowledge()).isEqualTo(NORMAL);
    assertThatIllegalStateException().isThrownBy(ACKNOWLEDGED::onAcknowledge);
    assertThatIllegalStateException().isThrownBy(NORMAL::onAcknowledge);
  }
}
