package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.film.SampleKey;
import dev.filmward.film.Structures;
import java.io.ByteArrayInputStream;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One reading a row. */
class LongLayoutTest {
  static final String HEADER = "taken_at,line,structure,roll,sample,lane,layer,thickness_um\n";
  static final String ROW = "2026-11-25T09:30:00Z,L1,LID-60,R7,S12,3,2,4.25\n";

  @Test
  void aRowIsAReading() throws Exception {
    Seen seen = Seen.in(HEADER + ROW);

    assertThat(seen.place())
        .isEqualTo(
            new Seen.Place(
                new SampleKey("L1", "LID-60", "R7", "S12"),
                Instant.parse("2026-11-25T09:30:00Z"),
                "LID-60",
                2,
                3,
                4.25));
    assertThat(seen.count).isEqualTo(new FileCount("readings.csv", 1, 1, 0, 0, seen.count.notes()));
    assertThat(seen.count.notes()).isEmpty();
  }

  @Test
  void columnsMayStandInAnyOrder() throws Exception {
    Seen seen =
        Seen.in(
            "thickness_um,layer,lane,sample,roll,structure,line,taken_at\n"
                + "4.25,2,3,S12,R7,LID-60,L1,2026-11-25T09:30:00Z\n");

    assertThat(seen.places).isEqualTo(Seen.in(HEADER + ROW).places);
  }

  @Test
  void headingsMayBeInCapitalsQuotedAndSpaced() throws Exception {
    Seen seen =
        Seen.in(
            " Taken_At ,LINE,\"Structure\", roll,sample\t,Lane,\" Layer \",Thickness_UM\r\n" + ROW);

    assertThat(seen.places).isEqualTo(Seen.in(HEADER + ROW).places);
  }

  @Test
  void otherColumnsAreIgnoredAndNoted() throws Exception {
    Seen seen =
        Seen.in(
            "operator,taken_at,line,structure,roll,sample,lane,layer,thickness_um,width [mm],\n"
                + "Kim,2026-11-25T09:30:00Z,L1,LID-60,R7,S12,3,2,4.25,1200,\n");

    assertThat(seen.places).isEqualTo(Seen.in(HEADER + ROW).places);
    assertThat(seen.count.notes())
        .containsExactly("3 columns ignored: \"operator\", \"width [mm]\", \"\"");
  }

  @ParameterizedTest
  @CsvSource({
    "1, 1",
    "2, 2",
    "003, 3",
    "Barrier, 2",
    "Outer skin + Tie, 1",
    "Inner tie + Seal, 3",
  })
  void aLayerIsAPositionOrAName(String layer, int position) throws Exception {
    assertThat(Seen.in(HEADER + ROW.replace(",3,2,", ",3," + layer + ",")).place().position())
        .isEqualTo(position);
  }

  @ParameterizedTest
  @CsvSource({
    "0, '3 reported layers of LID-60'",
    "4, '3 reported layers of LID-60'",
    "99999999999999999999, '3 reported layers of LID-60'",
    "-1, known are \"Outer skin + Tie\"",
    "1.0, known are \"Outer skin + Tie\"",
    "Barier, the nearest is \"Barrier\"",
    "barrier, the nearest is \"Barrier\"",
    "Tie, it is part of \"Outer skin + Tie\"",
    "'', known are",
  })
  void anyOtherLayerIsRejected(String layer, String reason) throws Exception {
    Rejection rejection = Seen.in(HEADER + ROW.replace(",3,2,", ",3," + layer + ",")).rejection();

    assertThat(rejection.column()).isEqualTo("layer");
    assertThat(rejection.value()).isEqualTo(layer);
    assertThat(rejection.reason()).startsWith("\"" + layer + "\" is not ").contains(reason);
  }

  @Test
  void aPositionIsOneWhateverLayersAreNamed() throws Exception {
    var structures = new Structures(List.of(Film.structure("N", "2", "1", "7")));
    Seen seen =
        Seen.in(
            new ByteArrayInputStream(
                (HEADER + "2026-11-25T09:30Z,L,N,R,S,1,2,5\n" + "2026-11-25T09:30Z,L,N,R,S,1,7,5\n")
                    .getBytes()),
            structures);

    assertThat(seen.places).extracting(Seen.Place::position).containsExactly(2, 3);
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "7, 7", "007, 7", "99999, 99999"})
  void aLaneIsAWholeNumber(String lane, int number) throws Exception {
    assertThat(Seen.in(HEADER + ROW.replace(",3,2,", "," + lane + ",2,")).place().lane())
        .isEqualTo(number);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "-1", "+1", "1.0", "1e3", "100000", "99999999999999", "A", "1 2", "١"})
  void anyOtherLaneIsRejected(String lane) throws Exception {
    Rejection rejection = Seen.in(HEADER + ROW.replace(",3,2,", "," + lane + ",2,")).rejection();

    assertThat(rejection.column()).isEqualTo("lane");
    assertThat(rejection.value()).isEqualTo(lane);
    assertThat(rejection.reason())
        .isEqualTo("\"" + lane + "\" is not a lane; lanes are whole numbers from 0 to 99999");
  }

  @ParameterizedTest
  @CsvSource({
    "LID-61, the nearest is \"LID-60\"",
    "lid-60, the nearest is \"LID-60\"",
    "Something else, 'known are \"LID-60\", \"BAR-80\"'",
    "'', 'known are \"LID-60\", \"BAR-80\"'",
  })
  void anUnknownStructureIsRejected(String code, String instead) throws Exception {
    Rejection rejection = Seen.in(HEADER + ROW.replace("LID-60", code)).rejection();

    assertThat(rejection.column()).isEqualTo("structure");
    assertThat(rejection.value()).isEqualTo(code);
    assertThat(rejection.reason())
        .isEqualTo("\"" + code + "\" is not a known structure; " + instead);
  }

  @Test
  void withoutStructuresEveryRowIsRejected() throws Exception {
    Seen seen =
        Seen.in(new ByteArrayInputStream((HEADER + ROW).getBytes()), new Structures(List.of()));

    assertThat(seen.rejection().reason())
        .isEqualTo("\"LID-60\" is not a known structure; none is known yet");
  }

  @Test
  void aRejectionSaysWhereWhatAndWhatInstead() throws Exception {
    Seen seen = Seen.in(HEADER + ROW + ROW.replace("4.25", " 4.25x ") + ROW);

    assertThat(seen.rejection())
        .isEqualTo(
            new Rejection(
                "readings.csv",
                3,
                "thickness_um",
                "4.25x",
                "\"4.25x\" is not a number; leave it empty where nothing was measured",
                "2026-11-25T09:30:00Z,L1,LID-60,R7,S12,3,2, 4.25x ",
                1));
    assertThat(seen.rejection().sentence())
        .isEqualTo(
            "readings.csv, line 3 (thickness_um): \"4.25x\" is not a number;"
                + " leave it empty where nothing was measured");
    assertThat(seen.count.quarantined()).isEqualTo(1);
    assertThat(seen.count.readings()).isEqualTo(2);
  }

  @ParameterizedTest
  @CsvSource({
    "'2026-11-25T09:30:00Z,L1,LID-60,R7,S12,3,2', 7 fields",
    "'2026-11-25T09:30:00Z,L1,LID-60,R7,S12,3,2,4,25', 9 fields",
    "'x', 1 field",
    "',,,,,,,,,,,,', 13 fields",
  })
  void aRowWithAnotherNumberOfFieldsIsRejected(String row, String fields) throws Exception {
    Rejection rejection = Seen.in(HEADER + row + "\n").rejection();

    assertThat(rejection.column()).isEmpty();
    assertThat(rejection.reason()).startsWith(fields + " where the header has 8; ");
    assertThat(rejection.raw()).isEqualTo(row);
  }

  @Test
  void aBadRowIsRejectedEvenIfNothingWasMeasuredInIt() throws Exception {
    Seen seen = Seen.in(HEADER + ROW.replace(",3,2,4.25", ",x,2,"));

    assertThat(seen.count.quarantined()).isEqualTo(1);
    assertThat(seen.count.missing()).isZero();
  }

  @Test
  void aSampleKeepsItsKeyAndTimeObjectsFromRowToRow() throws Exception {
    Seen seen =
        Seen.in(
            HEADER
                + ROW
                + ROW.replace("LID-60", "LID-66")
                + ROW.replace("R7", "\"R7\"")
                + "\n"
                + ROW.replace("09:30:00Z", "09:31:00Z")
                + ROW.replace("S12", "S13"));

    assertThat(seen.places).hasSize(4);
    assertThat(seen.places.get(1).key()).isSameAs(seen.places.get(0).key());
    assertThat(seen.places.get(1).takenAt()).isSameAs(seen.places.get(0).takenAt());
    assertThat(seen.places.get(2).key()).isSameAs(seen.places.get(0).key());
    assertThat(seen.places.get(2).takenAt()).isEqualTo(Instant.parse("2026-11-25T09:31:00Z"));
    assertThat(seen.places.get(3).key()).isNotEqualTo(seen.places.get(0).key());
  }

  @Test
  void aRowWithoutASampleIsReadAndNoted() throws Exception {
    Seen seen = Seen.in(HEADER + ROW.replace("S12", " "));

    assertThat(seen.place().key().sample()).isEmpty();
    assertThat(seen.count.notes())
        .containsExactly(
            "some rows do not name their sample; such rows of a roll count as one sample");
  }

  @Test
  void aHeaderWithoutRowsIsAFileWithoutReadings() throws Exception {
    assertThat(Seen.in(HEADER).count.rows()).isZero();
    assertThat(Seen.in(HEADER.strip()).count.rows()).isZero();
    assertThat(Seen.in(HEADER + "\n \n\r\n").count.rows()).isZero();
  }
}
