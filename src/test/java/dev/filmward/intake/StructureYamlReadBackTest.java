package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.film.Structure;
import dev.filmward.film.StructureYaml;
import org.junit.jupiter.api.Test;

/** What is written as a structures file is read as the same structures again. */
class StructureYamlReadBackTest {
  /** Names that YAML would read otherwise, and groups that state more than their members do. */
  private static final String AWKWARD =
      """
      structures:
        - code: "60"
          name: "Film: \\"A\\", 60 µm # new\\u0001"
          layers:
            - {name: "Skin, 1", role: skin, resin: "no", target: 0.6 mil, extruder: "{A}", density: 0.9225}
            - {name: "'Tie'", role: tie, target: 4 um, average: {lower: 3.7 um}}
            - {name: "null", role: barrier, upper: 0.006 mm}
            - {name: "- Seal", role: seal, lower: 30 um, velocity: 1950.25, greatest: 0.05 mm}
          total: {lower: 57 um, average: {target: 60 um, upper: 61 um}}
          reported:
            - {layers: ["Skin, 1", "'Tie'"], name: "Skin + \\\\", upper: 21 um, average: {lower: 18 um}}
            - ["null"]
            - {layers: ["- Seal"], target: 32 um}
      """;

  @Test
  void everyPartComesBack() throws Exception {
    for (String yaml : new String[] {AWKWARD, StructuresFileTest.LIDDING}) {
      Structure structure = StructuresFileTest.read(yaml).all().iterator().next();
      String written = StructureYaml.of(structure);
      assertThat(StructuresFileTest.read(written).all()).containsExactly(structure);
    }
  }

  @Test
  void plainWordsStandAsTheyAre() throws Exception {
    Structure structure =
        StructuresFileTest.read(StructuresFileTest.LIDDING).all().iterator().next();
    assertThat(StructureYaml.of(structure))
        .contains("- code: LID-60\n")
        .contains("name: \"Barrier lidding film, 60 µm\"".replace("\"", ""))
        .contains("reported: [[Outer skin, Tie], [Barrier], [Inner tie, Seal]]");
  }
}
