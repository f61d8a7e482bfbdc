package dev.filmward.telling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Quiet hours go by the plant's clock, also in the nights in which it is put forward (29 March
 * 2026, 02:00 to 03:00 in Berlin) and back (25 October 2026, 03:00 to 02:00).
 */
class QuietHoursTest {
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

  @ParameterizedTest
  @CsvSource({
    // an ordinary winter night, UTC+1
    "22:00, 06:00, 2026-01-10T20:59:59Z, ''",
    "22:00, 06:00, 2026-01-10T21:00:00Z, 2026-01-11T05:00:00Z",
    "22:00, 06:00, 2026-01-11T04:59:59Z, 2026-01-11T05:00:00Z",
    "22:00, 06:00, 2026-01-11T05:00:00Z, ''",
    // within one day
    "12:00, 13:00, 2026-01-10T11:30:00Z, 2026-01-10T12:00:00Z",
    "12:00, 13:00, 2026-01-10T12:00:00Z, ''",
    // forward: from 22:00 at UTC+1 to 06:00 at UTC+2 are 7 hours
    "22:00, 06:00, 2026-03-28T21:00:00Z, 2026-03-29T04:00:00Z",
    "22:00, 06:00, 2026-03-29T04:00:00Z, ''",
    // to a time that is jumped over: the moment of the jump, 01:00 UTC
    "22:00, 02:30, 2026-03-29T00:59:59Z, 2026-03-29T01:00:00Z",
    "22:00, 02:30, 2026-03-29T01:00:00Z, ''",
    // back: from 22:00 at UTC+2 to 06:00 at UTC+1 are 9 hours
    "22:00, 06:00, 2026-10-24T20:00:00Z, 2026-10-25T05:00:00Z",
    // to a time that comes twice: the second of them; no gap after the first
    "22:00, 02:30, 2026-10-25T00:30:00Z, 2026-10-25T01:30:00Z",
    "22:00, 02:30, 2026-10-25T00:45:00Z, 2026-10-25T01:30:00Z",
    "22:00, 02:30, 2026-10-25T01:30:00Z, ''",
    // from a time that comes twice: the first of them
    "02:30, 05:00, 2026-10-25T00:29:59Z, ''",
    "02:30, 05:00, 2026-10-25T00:30:00Z, 2026-10-25T04:00:00Z",
  })
  void theQuietEndsWhenThePlantsClockSaysSo(LocalTime from, LocalTime to, Instant at, String end) {
    Optional<Instant> expected = end.isEmpty() ? Optional.empty() : Optional.of(Instant.parse(end));
    assertThat(new QuietHours(from, to).endAfter(at, BERLIN)).isEqualTo(expected);
  }

  @Test
  void hoursThatBeginWhenTheyEndAreRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new QuietHours(LocalTime.NOON, LocalTime.NOON));
  }
}
