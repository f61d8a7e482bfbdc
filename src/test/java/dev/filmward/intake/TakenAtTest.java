package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How a time may be written; the plant is in Europe/Berlin. */
class TakenAtTest {

  private static Seen seen(String takenAt) throws Exception {
    return Seen.in(LongLayoutTest.HEADER + "\"" + takenAt + "\",L1,LID-60,R7,S12,3,2,4.25\n");
  }

  @ParameterizedTest
  @CsvSource({
    "2026-11-25T09:30:00Z, 2026-11-25T09:30:00Z",
    "2026-11-25T09:30Z, 2026-11-25T09:30:00Z",
    "2026-11-25 09:30:00Z, 2026-11-25T09:30:00Z",
    "2026-11-25t09:30:00z, 2026-11-25T09:30:00Z",
    "2026-11-25T09:30:00+01:00, 2026-11-25T08:30:00Z",
    "2026-11-25T09:30:00+0100, 2026-11-25T08:30:00Z",
    "2026-11-25T09:30:00+01, 2026-11-25T08:30:00Z",
    "2026-11-25 09:30:00 +01:00, 2026-11-25T08:30:00Z",
    "2026-11-25T09:30:00-05:30, 2026-11-25T15:00:00Z",
    "2026-11-25T09:30:00-00:00, 2026-11-25T09:30:00Z",
    "2026-11-25T23:30:00-18:00, 2026-11-26T17:30:00Z",
    "2026-11-25T09:30:00.5Z, 2026-11-25T09:30:00.500Z",
    "'2026-11-25T09:30:00,25Z', 2026-11-25T09:30:00.250Z",
    "2026-11-25T09:30:00.123456789Z, 2026-11-25T09:30:00.123456789Z",
    "2026-11-25T09:30:00.1234567899Z, 2026-11-25T09:30:00.123456789Z",
    "2028-02-29T00:00Z, 2028-02-29T00:00:00Z",
    "0001-01-01T00:00Z, 0001-01-01T00:00:00Z",
    "9999-12-31T23:59:59Z, 9999-12-31T23:59:59Z",
  })
  void aTimeWithAnOffsetIsAPointInTime(String written, Instant takenAt) throws Exception {
    Seen seen = seen(written);

    assertThat(seen.place().takenAt()).isEqualTo(takenAt);
    assertThat(seen.count.notes()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "2026-11-25T09:30:00, 2026-11-25T08:30:00Z",
    "2026-11-25 09:30, 2026-11-25T08:30:00Z",
    "2026-07-01 09:30:00.250, 2026-07-01T07:30:00.250Z",
    "2026-03-29 01:59:59, 2026-03-29T00:59:59Z",
    "2026-03-29 03:00:00, 2026-03-29T01:00:00Z",
    "2026-10-25 01:59:59, 2026-10-24T23:59:59Z",
    "2026-10-25 03:00:00, 2026-10-25T02:00:00Z",
  })
  void aTimeWithoutAnOffsetIsLocalToThePlant(String written, Instant takenAt) throws Exception {
    Seen seen = seen(written);

    assertThat(seen.place().takenAt()).isEqualTo(takenAt);
    assertThat(seen.count.notes())
        .containsExactly("times without an offset were read as local times of Europe/Berlin");
  }

  @ParameterizedTest
  @CsvSource({
    "2026-10-25 02:00:00, 2026-10-25T00:00:00Z",
    "2026-10-25 02:30, 2026-10-25T00:30:00Z",
    "2026-10-25 02:59:59, 2026-10-25T00:59:59Z",
  })
  void ofALocalTimeThatOccursTwiceTheEarlierIsTakenAndThisIsNoted(String written, Instant takenAt)
      throws Exception {
    Seen seen = seen(written);

    assertThat(seen.place().takenAt()).isEqualTo(takenAt);
    assertThat(seen.count.notes())
        .containsExactly(
            "times without an offset were read as local times of Europe/Berlin",
            "some local times occur twice, where clocks were put back; the earlier of the two was"
                + " taken");
  }

  @ParameterizedTest
  @ValueSource(strings = {"2026-03-29 02:00", "2026-03-29 02:30:00", "2026-03-29T02:59:59.999"})
  void aLocalTimeThatDoesNotOccurIsRejected(String written) throws Exception {
    Rejection rejection = seen(written).rejection();

    assertThat(rejection.column()).isEqualTo("taken_at");
    assertThat(rejection.value()).isEqualTo(written);
    assertThat(rejection.reason())
        .startsWith("2026-03-29 02:")
        .endsWith(
            " does not occur in Europe/Berlin, where clocks were put forward;"
                + " write the time with its offset");
  }

  @Test
  void theSameTimesWithTheirOffsetAreFine() throws Exception {
    assertThat(seen("2026-10-25 02:30+01:00").place().takenAt())
        .isEqualTo(Instant.parse("2026-10-25T01:30:00Z"));
    assertThat(seen("2026-03-29 02:30+01:00").place().takenAt())
        .isEqualTo(Instant.parse("2026-03-29T01:30:00Z"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "2026-11-25",
        "2026-11-25T",
        "2026-11-25T09",
        "09:30:00",
        "25.11.2026 09:30",
        "11/25/2026 09:30",
        "25-11-2026 09:30",
        "2026-13-01 09:30",
        "2026-00-01 09:30",
        "2026-02-29 09:30",
        "2026-04-31 09:30",
        "2026-11-00 09:30",
        "2026-11-25 24:00",
        "2026-11-25 09:60",
        "2026-11-25 09:30:60",
        "2026-11-25 9:30",
        "2026-11-25  09:30",
        "2026-11-25 09:30:",
        "2026-11-25 09:30:00.",
        "2026-11-25 09:30.5",
        "2026-11-25T09:30:00+1",
        "2026-11-25T09:30:00+01:0",
        "2026-11-25T09:30:00+01:60",
        "2026-11-25T09:30:00+18:01",
        "2026-11-25T09:30:00+19:00",
        "2026-11-25T09:30:00+01:00:00",
        "2026-11-25T09:30:00ZZ",
        "2026-11-25T09:30:00 CET",
        "2026-11-25T09:30:00[Europe/Berlin]",
        "20261125T093000Z",
        "0000-01-01T00:00Z",
        "-2026-11-25T09:30Z",
        "+12026-11-25T09:30Z",
        "12026-11-25T09:30Z",
        "２０２６-11-25 09:30",
        "1764063000",
        "now"
      })
  void anythingElseIsRejected(String written) throws Exception {
    Rejection rejection = seen(written).rejection();

    assertThat(rejection.column()).isEqualTo("taken_at");
    assertThat(rejection.value()).isEqualTo(written);
    assertThat(rejection.reason())
        .isEqualTo(
            "\""
                + written
                + "\" is not a date and time; write it like 2026-11-25 09:30:00, with an offset"
                + " such as +01:00 where it is known");
  }
}
