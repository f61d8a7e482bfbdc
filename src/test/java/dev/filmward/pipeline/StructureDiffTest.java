package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.film.Structure;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What differs between two versions of a structure, named part by part. */
class StructureDiffTest {
  private static final String FILM =
      """
      structures:
        - code: TRI-50
          name: Film
          layers:
            - {name: Skin, role: skin, resin: LDPE, target: 15 um, lower: 13 um}
            - {name: Core, role: core, target: 20 um, density: 0.92, average: {upper: 21 um}}
            - {name: Seal, role: seal, target: 0.6 mil}
          total: {target: 50 um, upper: 55 um}
      """;

  private static Structure read(String yaml) throws Exception {
    return StructureBook.read("film.yaml", yaml.getBytes(StandardCharsets.UTF_8))
        .find("TRI-50")
        .orElseThrow();
  }

  /** As "layer 2 Core upper: 5.0 -> 6.0". */
  private static List<String> changes(String... oldAndNew) throws Exception {
    String after = FILM;
    for (int i = 0; i < oldAndNew.length; i += 2) {
      assertThat(after).contains(oldAndNew[i]);
      after = after.replace(oldAndNew[i], oldAndNew[i + 1]);
    }
    return StructureDiff.between(read(FILM), read(after)).stream()
        .map(StructureDiffTest::words)
        .toList();
  }

  private static String words(StructureChange change) {
    return "%s %d %s %s: %s -> %s"
        .formatted(
            change.part(),
            change.position(),
            change.name(),
            change.what(),
            words(change.was()),
            words(change.is()));
  }

  private static String words(StructureChange.Value value) {
    return value.number().isPresent() ? "" + value.number().getAsDouble() : value.text();
  }

  @Test
  void theSameInAnotherUnitIsNoChange() throws Exception {
    // 0.6 mil is 15.24 um exactly
    assertThat(changes("0.6 mil", "15.24 um", "15 um", "0.015 mm")).isEmpty();
  }

  @Test
  void eachPropertyIsNamedWithBothValues() throws Exception {
    assertThat(changes("name: Film", "name: Film two"))
        .containsExactly("structure 0  name: Film -> Film two");
    assertThat(changes("lower: 13 um", "upper: 17 um"))
        .containsExactly("layer 1 Skin lower: 13.0 -> ", "layer 1 Skin upper:  -> 17.0");
    assertThat(changes("role: core", "role: barrier", "0.92", "0.93", "21 um", "22 um"))
        .containsExactly(
            "layer 2 Core role: core -> barrier",
            "layer 2 Core average.upper: 21.0 -> 22.0",
            "layer 2 Core density: 0.92 -> 0.93");
    assertThat(changes("55 um", "56 um")).containsExactly("total 0  upper: 55.0 -> 56.0");
  }

  @Test
  void aRenamedLayerIsTheOneInItsPlace() throws Exception {
    assertThat(changes("name: Core", "name: Middle"))
        .containsExactly("layer 2 Middle name: Core -> Middle");
  }

  @Test
  void aLayerThatComesOrGoesDoesNotMoveTheOthers() throws Exception {
    assertThat(
            changes("      - {name: Core", "      - {name: Tie, role: tie}\n      - {name: Core"))
        .containsExactly("layer 2 Tie added:  -> ");
    assertThat(
            changes(
                "      - {name: Skin, role: skin, resin: LDPE, target: 15 um, lower: 13 um}\n", ""))
        .containsExactly("layer 1 Skin removed:  -> ");
  }

  @Test
  void layersThatChangePlacesAreMoved() throws Exception {
    assertThat(
            changes("name: Skin", "name: X", "name: Seal", "name: Skin", "name: X", "name: Seal"))
        .contains("layer 1 Seal moved: 3 -> 1", "layer 3 Skin moved: 1 -> 3");
  }

  @Test
  void whatIsReportedTogetherIsAChangeOfItsOwn() throws Exception {
    assertThat(changes("    total", "    reported: [[Skin, Core], [Seal]]\n    total"))
        .containsExactly("reported 0  layers:  -> Skin + Core");
  }
}
