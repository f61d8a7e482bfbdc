package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A mapping file is checked wholly, and every fault is said at once with its line. */
class MappingFileTest {
  private static final String GOOD =
      """
      mapping: Gauge 3
      file:
        separator: semicolon
        decimal: comma
        headings: [Zeit, Rolle, Probe, Spur, "Dicke [um]", Dicke, Dicke]
      columns:
        taken_at: {column: Zeit, pattern: dd.MM.yyyy HH:mm, zone: Europe/Berlin, twice: refuse}
        line: {constant: Blown 1}
        structure: {constant: LID-60}
        roll: Rolle
        sample: Probe
        lane: Spur
        layer: {constant: Barrier}
      readings:
        - {column: "Dicke [um]", unit: um}
      missing: [OL]
      """;
  private static final String HEADER = "Zeit;Rolle;Probe;Spur;Dicke [um];Dicke;Dicke\n";

  private static Mapping read(String yaml) throws Exception {
    return MappingFile.read(
        new ByteArrayInputStream(yaml.getBytes(StandardCharsets.UTF_8)), "m.yaml");
  }

  private static List<String> faults(String yaml) {
    return catchThrowableOfType(MappingFault.class, () -> read(yaml)).faults();
  }

  private static Seen seen(String rows, Mapping... mappings) throws Exception {
    Seen seen = new Seen();
    seen.count =
        new ReadingsParser(Film.BOTH, Seen.PLANT, new Mappings(List.of(mappings)))
            .parse(
                new ByteArrayInputStream((HEADER + rows).getBytes(StandardCharsets.UTF_8)),
                "readings.csv",
                seen,
                seen.rejections::add);
    return seen;
  }

  @Test
  void everyFaultIsSaidAtOnceWithItsLine() {
    String bad =
        GOOD.replace("separator: semicolon", "separator: dots")
            .replace("zone: Europe/Berlin", "zone: Mars")
            .replace("pattern: dd.MM.yyyy HH:mm", "pattern: HH:mm")
            .replace("roll: Rolle", "roll: Role")
            .replace("unit: um", "unit: furlong");
    assertThat(faults(bad))
        .hasSize(5)
        .anySatisfy(f -> assertThat(f).startsWith("m.yaml, line 3,").contains("\"dots\""))
        .anySatisfy(f -> assertThat(f).startsWith("m.yaml, line 7,").contains("\"Mars\""))
        .anySatisfy(f -> assertThat(f).startsWith("m.yaml, line 7,").contains("\"HH:mm\""))
        .anySatisfy(f -> assertThat(f).contains("line 10,").contains("nearest is \"Rolle\""))
        .anySatisfy(f -> assertThat(f).contains("line 15,").contains("\"furlong\" is no unit"));
  }

  @Test
  void aLengthWithoutUnitAndAnOpenQuestionAreRefused() {
    assertThat(faults(GOOD.replace(", unit: um", "")))
        .hasSize(1)
        .first()
        .asString()
        .contains("unit");
    assertThat(faults(GOOD.replace("{constant: Blown 1}", "{constant: \"?\"}")))
        .singleElement()
        .asString()
        .contains("not answered yet");
  }

  @Test
  void aHeadingThatStandsTwiceIsNamedByItsNumber() throws Exception {
    assertThat(faults(GOOD.replace("\"Dicke [um]\", unit", "Dicke, unit")))
        .singleElement()
        .asString()
        .contains("heads several columns")
        .contains("#6");
    Mapping mapping = read(GOOD.replace("{column: \"Dicke [um]\"", "{column: \"#7\""));
    assertThat(seen("25.11.2026 09:30;R7;S1;1;1;2;3,5\n", mapping).ums()).containsExactly(3.5);
  }

  @Test
  void aPointIsNoDecimalSignWhereTheMappingSaysComma() throws Exception {
    Seen seen = seen("25.11.2026 09:30;R7;S1;1;12.5;;\n", read(GOOD));
    assertThat(seen.ums()).isEmpty();
    assertThat(seen.rejection().reason()).contains("\"12.5\"").contains("decimal comma");
    assertThat(seen.rejection().raw()).isEqualTo("25.11.2026 09:30;R7;S1;1;12.5;;");
    assertThat(seen.rejection().line()).isEqualTo(2);
  }

  @Test
  void aTimeThatOccursTwiceIsRefusedWhereTheMappingSaysSo() throws Exception {
    Seen seen = seen("25.10.2026 02:30;R7;S1;1;12,5;;\n", read(GOOD));
    assertThat(seen.rejection().reason()).contains("occurs twice in Europe/Berlin");
  }

  @Test
  void twoMappingsForTheSameHeadingsRefuseTheFileInWords() throws Exception {
    Mapping one = read(GOOD);
    Mapping other = read(GOOD.replace("Gauge 3", "Gauge 4"));
    assertThatThrownBy(() -> seen("", one, other))
        .isInstanceOf(FileRefused.class)
        .hasMessageContaining("\"Gauge 3\", \"Gauge 4\"");
  }

  @Test
  void aFileOfTheHouseNeedsNoMappingAmongMappings() throws Exception {
    Seen seen = new Seen();
    String csv = LongLayoutTest.HEADER + "2026-11-25 09:30,L1,LID-60,R7,S12,3,2,4.25\n";
    new ReadingsParser(Film.BOTH, Seen.PLANT, new Mappings(List.of(read(GOOD))))
        .parse(
            new ByteArrayInputStream(csv.getBytes(StandardCharsets.UTF_8)),
            "readings.csv",
            seen,
            seen.rejections::add);
    assertThat(seen.ums()).containsExactly(4.25);
  }
}
