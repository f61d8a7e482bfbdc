package dev.filmward.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.film.Role;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.film.StructureYaml;
import java.util.List;
import org.junit.jupiter.api.Test;

class StructureYamlTest {
  private static final StructureDraft DRAFT =
      StructureDraft.of(
          "TRY-30",
          "Film to try, 30 um",
          LayerDraft.of("Outer", Role.SKIN, "LDPE")
              .individual(9, 10, 11.5)
              .average(9.5, 10.5)
              .extruded("A", 0.922)
              .heard(1950, 25),
          LayerDraft.of("Tie", Role.TIE, "MAH-g-LLDPE").atLeast(4, 5).averageAtLeast(4.5),
          LayerDraft.of("Barrier", Role.BARRIER, "EVOH 32").individual(12, 15, 18));

  @Test
  void aStructureIsWrittenAsTheStructuresFileAsks() {
    assertThat(StructureYaml.of(DRAFT.reported(SpecLimits.of(27, 30, 33), List.of(2, 1))))
        .isEqualTo(
            """
            structures:
              - code: TRY-30
                name: Film to try, 30 um
                layers:    # from the outer face inwards; um
                  - name: Outer
                    role: skin
                    resin: LDPE
                    target: 10 um
                    lower: 9 um
                    upper: 11.5 um
                    average: {lower: 9.5 um, upper: 10.5 um}
                    density: 0.922
                    extruder: A
                    velocity: 1950
                    greatest: 25 um
                  - name: Tie
                    role: tie
                    resin: MAH-g-LLDPE
                    target: 5 um
                    lower: 4 um
                    average: {lower: 4.5 um}
                  - name: Barrier
                    role: barrier
                    resin: EVOH 32
                    target: 15 um
                    lower: 12 um
                    upper: 18 um
                total: {target: 30 um, lower: 27 um, upper: 33 um}
                reported: [[Outer, Tie], [Barrier]]
            """);
  }

  @Test
  void whatIsLeftOutIsNotWritten() {
    assertThat(StructureYaml.of(DRAFT.reportedEach(SpecLimits.NONE)))
        .doesNotContain("total")
        .doesNotContain("reported");
  }

  /** Targets and lower limits add up; the tie has no upper limit, so the two have none. */
  @Test
  void layersReportedTogetherHaveTheSumOfTheirLimits() {
    Structure structure = DRAFT.reported(SpecLimits.NONE, List.of(2, 1));
    assertThat(structure.reported().get(0).name()).isEqualTo("Outer + Tie");
    SpecLimits both = structure.reported().get(0).individual();
    assertThat(both.target()).hasValue(10.0 + 5);
    assertThat(both.lower()).hasValue(9.0 + 4);
    assertThat(both.upper()).isEmpty();
  }

  @Test
  void everyLayerMustBeReportedOnce() {
    assertThatThrownBy(() -> DRAFT.reported(SpecLimits.NONE, List.of(2)))
        .hasMessageContaining("2 of 3 layers");
  }
}
