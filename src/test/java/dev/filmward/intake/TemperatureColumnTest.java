package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.intake.recognition.Proposal;
import dev.filmward.intake.recognition.Recognition;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A file may say how warm the film was. */
class TemperatureColumnTest {
  private static final String LONG =
      "taken_at,line,structure,roll,sample,temperature_c,lane,layer,thickness_um\n";
  private static final String WIDE =
      "taken_at,line,structure,roll,sample,lane,layer_1_um,layer_2_um,layer_3_um,Temperature_C\n";
  private static final String HEAD = "2026-11-25T09:30:00Z,L1,LID-60,R7,";

  /** The columns stand as the swift path wants them, so that this must go another way. */
  @Test
  void everyReadingOfTheLongLayoutComesWithItsTemperature() throws Exception {
    Seen seen =
        Seen.in(
            LONG
                + HEAD
                + "S1,23.5,1,1,18.5\n"
                + HEAD
                + "S1,23.5,2,1,18.6\n"
                + HEAD
                + "S1,-4,3,1,-\n"
                + HEAD
                + "S2,,1,1,18.4\n");
    assertThat(seen.temperatures).containsExactly("S1 1 23.5", "S1 2 23.5", "S1 3 -4.0");
    assertThat(seen.count).isEqualTo(new FileCount("readings.csv", 4, 3, 1, 0, List.of()));
  }

  @Test
  void aRowOfTheWideLayoutSaysItForEachPlace() throws Exception {
    Seen seen = Seen.in(WIDE + HEAD + "S1,3,18.5,5,36.25,\"23,5\"\n" + HEAD + "S1,4,18,5,36,NaN\n");
    assertThat(seen.temperatures).containsExactly("S1 3 23.5", "S1 3 23.5", "S1 3 23.5");
    assertThat(seen.ums()).hasSize(6);
  }

  @ParameterizedTest
  @ValueSource(strings = {"warm", "301", "-101", "1e2", "2.3.5", "73 F"})
  void aRowWhoseTemperatureIsNoneIsQuarantinedWhole(String wrong) throws Exception {
    Seen seen = Seen.in(WIDE + HEAD + "S1,3,18.5,5,36.25," + wrong + "\n");
    assertThat(seen.places).isEmpty();
    assertThat(seen.temperatures).isEmpty();
    assertThat(seen.rejection().column()).isEqualTo("Temperature_C");
    assertThat(seen.rejection().value()).isEqualTo(wrong);
    assertThat(seen.rejection().readings()).isEqualTo(3);
    assertThat(seen.rejection().reason()).contains("degrees Celsius from -100 to 300");
  }

  @Test
  void twoColumnsOfItAreRefused() {
    assertThatThrownBy(() -> Seen.in("temperature_c," + LONG))
        .isInstanceOf(FileRefused.class)
        .hasMessageContaining("both headed \"temperature_c\"");
  }

  @Test
  void aMappingNamesTheColumnAndItsDecimalSignCounts() throws Exception {
    String mapping =
        """
        mapping: Gauge 3
        file:
          separator: semicolon
          decimal: comma
          headings: [Zeit, Rolle, Probe, Spur, "Dicke [um]", "Folie [°C]"]
        columns:
          taken_at: {column: Zeit, pattern: dd.MM.yyyy HH:mm, zone: Europe/Berlin, twice: refuse}
          line: {constant: Blown 1}
          structure: {constant: LID-60}
          roll: Rolle
          sample: Probe
          lane: Spur
          layer: {constant: Barrier}
          temperature_c: "Folie [°C]"
        readings:
          - {column: "Dicke [um]", unit: um}
        """;
    String rows =
        "Zeit;Rolle;Probe;Spur;Dicke [um];Folie [°C]\n"
            + "25.11.2026 09:30;R7;S1;1;5,1;23,5 °C\n"
            + "25.11.2026 09:30;R7;S1;2;5,2;23.5\n"
            + "25.11.2026 09:30;R7;S1;3;5,3;\n";
    Mapping read =
        MappingFile.read(
            new ByteArrayInputStream(mapping.getBytes(StandardCharsets.UTF_8)), "m.yaml");
    Seen seen = new Seen();
    new ReadingsParser(Film.BOTH, Seen.PLANT, new Mappings(List.of(read)))
        .parse(
            new ByteArrayInputStream(rows.getBytes(StandardCharsets.UTF_8)),
            "readings.csv",
            seen,
            seen.rejections::add);
    assertThat(seen.temperatures).containsExactly("S1 1 23.5");
    assertThat(seen.ums()).containsExactly(5.1, 5.3);
    assertThat(seen.rejection().value()).isEqualTo("23.5");
  }

  /** Only where the heading says that it is of degrees Celsius; the melt's is another one. */
  @Test
  void aProposedMappingHasTheColumn() throws Exception {
    String file =
        "Zeit;Linie;Struktur;Rolle;Probe;Spur;Schicht;Dicke [um];Folientemperatur [°C];Massetemperatur [°C];Temp [F]\n"
            + "25.11.2026 09:30;L1;LID-60;R7;S1;1;Barrier;5,1;23,5;215;74\n"
            + "25.11.2026 09:30;L1;LID-60;R7;S1;2;Barrier;5,2;24,5;216;75\n";
    byte[] bytes = file.getBytes(StandardCharsets.UTF_8);
    Recognition.Known known = new Recognition.Known(Film.BOTH, Seen.PLANT);
    Proposal proposal = Recognition.of(bytes, "readings.csv", known, Map.of());
    assertThat(proposal.questions()).isEmpty();
    Seen seen = new Seen();
    new ReadingsParser(Film.BOTH, Seen.PLANT, new Mappings(List.of(proposal.mapping().get())))
        .parse(new ByteArrayInputStream(bytes), "readings.csv", seen, seen.rejections::add);
    assertThat(seen.rejections).isEmpty();
    assertThat(seen.temperatures).containsExactly("S1 1 23.5", "S1 2 24.5");
  }
}
