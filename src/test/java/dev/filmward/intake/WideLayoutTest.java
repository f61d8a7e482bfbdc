package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.film.SampleKey;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A lane of a sample a row, with a column for each layer. */
class WideLayoutTest {
  private static final String HEADER =
      "taken_at,line,structure,roll,sample,lane,layer_1_um,layer_2_um,layer_3_um\n";
  private static final String HEAD = "2026-11-25T09:30:00Z,L1,LID-60,R7,S12,3,";

  @Test
  void aRowIsAReadingForEachLayer() throws Exception {
    Seen seen = Seen.in(HEADER + HEAD + "18.5,5,36.25\n");

    assertThat(seen.ums()).containsExactly(18.5, 5.0, 36.25);
    assertThat(seen.places).extracting(Seen.Place::position).containsExactly(1, 2, 3);
    assertThat(seen.places)
        .allSatisfy(
            place -> {
              assertThat(place.key()).isEqualTo(new SampleKey("L1", "LID-60", "R7", "S12"));
              assertThat(place.takenAt()).isEqualTo(Instant.parse("2026-11-25T09:30:00Z"));
              assertThat(place.lane()).isEqualTo(3);
            });
    assertThat(seen.count).isEqualTo(new FileCount("readings.csv", 1, 3, 0, 0, List.of()));
  }

  @Test
  void columnsMayStandInAnyOrderAndHaveTheirOwnUnits() throws Exception {
    Seen seen =
        Seen.in(
            "layer_3_mil,lane,layer_1_mm,sample,roll,note,structure,line,layer_2_um,taken_at\n"
                + "1.5,3,0.0185,S12,R7,ok,LID-60,L1,5,2026-11-25T09:30:00Z\n");

    assertThat(seen.ums()).containsExactly(1.5 * 25.4, 0.0185 * 1000, 5.0);
    assertThat(seen.places).extracting(Seen.Place::position).containsExactly(3, 1, 2);
    assertThat(seen.count.notes()).containsExactly("1 column ignored: \"note\"");
  }

  @Test
  void aBadCellCostsThatReadingOnly() throws Exception {
    Seen seen = Seen.in(HEADER + HEAD + "18.5,x,36.25\n");

    assertThat(seen.ums()).containsExactly(18.5, 36.25);
    assertThat(seen.rejection().column()).isEqualTo("layer_2_um");
    assertThat(seen.rejection().value()).isEqualTo("x");
    assertThat(seen.rejection().readings()).isEqualTo(1);
    assertThat(seen.rejection().raw()).isEqualTo(HEAD + "18.5,x,36.25");
    assertThat(seen.count).isEqualTo(new FileCount("readings.csv", 1, 2, 0, 1, List.of()));
  }

  @ParameterizedTest
  @CsvSource({
    "2026-11-25T09:30:00Z, yesterday, taken_at",
    "',3,', ',middle,', lane",
    "LID-60, LID-06, structure",
    "36.25, '36,25', ''",
    "36.25, '\"36.25\"x', ''",
  })
  void aBadRowCostsAllItsReadings(String from, String to, String column) throws Exception {
    Seen seen = Seen.in(HEADER + (HEAD + "18.5,,36.25\n").replace(from, to));

    assertThat(seen.places).isEmpty();
    assertThat(seen.rejection().column()).isEqualTo(column);
    assertThat(seen.rejection().readings()).isEqualTo(3);
    assertThat(seen.count).isEqualTo(new FileCount("readings.csv", 1, 0, 0, 3, List.of()));
  }

  @Test
  void whatWasNotMeasuredIsMissingAndNotZero() throws Exception {
    Seen seen = Seen.in(HEADER + HEAD + ",NaN,—\n");

    assertThat(seen.ums()).containsExactly(Double.NaN, Double.NaN, Double.NaN);
    assertThat(seen.count).isEqualTo(new FileCount("readings.csv", 1, 0, 3, 0, List.of()));
  }

  @Test
  void aColumnBeyondTheLayersOfTheStructureIsMissingOrRejected() throws Exception {
    String header = HEADER.strip() + ",layer_4_um,layer_5_um\n";
    Seen seen =
        Seen.in(
            header
                + HEAD
                + "18.5,5,36.25,,-\n"
                + HEAD
                + "18.5,5,36.25,7,NaN\n"
                + HEAD.replace("LID-60", "BAR-80")
                + "1,2,3,4,5\n");

    assertThat(seen.ums())
        .containsExactly(18.5, 5.0, 36.25, 18.5, 5.0, 36.25, 1.0, 2.0, 3.0, 4.0, 5.0);
    assertThat(seen.count).isEqualTo(new FileCount("readings.csv", 3, 11, 3, 1, List.of()));
    assertThat(seen.rejection().column()).isEqualTo("layer_4_um");
    assertThat(seen.rejection().reason())
        .isEqualTo(
            "LID-60 has 3 reported layers and no layer 4; leave it empty where nothing was measured");
  }

  @Test
  void layersGoByNameWhateverTheirPositionInAStructure() throws Exception {
    Seen seen =
        Seen.in(
            "taken_at,line,structure,roll,sample,lane,SEAL [um],Barrier [um],Outer skin + Tie (um)\n"
                + HEAD
                + ",5,18.5\n"
                + HEAD.replace("LID-60", "BAR-80")
                + "11,12,\n");

    assertThat(seen.ums()).containsExactly(5.0, 18.5, 11.0, 12.0);
    assertThat(seen.places).extracting(Seen.Place::position).containsExactly(2, 1, 5, 3);
    assertThat(seen.count).isEqualTo(new FileCount("readings.csv", 2, 4, 2, 0, List.of()));
  }

  @Test
  void aLayerThatOnlyAnotherStructureReportsIsRejected() throws Exception {
    Seen seen = Seen.in("taken_at,line,structure,roll,sample,lane,Seal [um]\n" + HEAD + "11\n");

    assertThat(seen.rejection().reason())
        .isEqualTo(
            "\"Seal\" is not reported by itself in LID-60; it is part of \"Inner tie + Seal\"");
  }

  @Test
  void unchangedHeadsAreReadOnceAndChangedOnesAgain() throws Exception {
    Seen seen =
        Seen.in(
            HEADER
                + HEAD
                + "1,1,1\n"
                + HEAD
                + "2,2,2\n"
                + HEAD.replace(",3,", ",4,")
                + "3,3,3\n"
                + HEAD.replace(",3,", ",x,")
                + "4,4,4\n"
                + HEAD
                + "5,5,5\n");

    assertThat(seen.ums()).containsExactly(1., 1., 1., 2., 2., 2., 3., 3., 3., 5., 5., 5.);
    assertThat(seen.places)
        .extracting(Seen.Place::lane)
        .containsExactly(3, 3, 3, 3, 3, 3, 4, 4, 4, 3, 3, 3);
    assertThat(seen.rejection().line()).isEqualTo(5);
  }
}
