package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Role;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What a structures file says. */
class StructuresFileTest {
  static final String LIDDING =
      """
      structures:
        - code: LID-60
          name: Barrier lidding film, 60 µm
          layers:                       # from the outer face inwards
            - name: Outer skin
              role: skin
              resin: LDPE
              target: 14 um
              lower: 12.6 um
              upper: 15.4 um
              average: {lower: 13.3 um, upper: 14.7 um}
              density: 0.922
              extruder: A
              velocity: 1950
              greatest: 25 um
            - {name: Tie, role: tie, target: 4 um, lower: 3 um, upper: 5 um}
            - {name: Barrier, role: barrier, target: 0.2 mil, upper: 0.006 mm}
            - {name: Inner tie, role: TIE, target: 4 um, lower: 3 um, upper: 5 um}
            - {name: Seal, role: seal, target: 32 um, lower: 30 um, upper: 34 um}
          total: {target: 60 um, lower: 57 um, upper: 63 um, average: {lower: 58 um}}
          reported: [[Outer skin, Tie], [Barrier], [Inner tie, Seal]]
      """;

  static Structures read(String yaml) throws Exception {
    return StructuresFile.read(
        new ByteArrayInputStream(yaml.getBytes(StandardCharsets.UTF_8)), "structures.yaml");
  }

  @Test
  void aLayerIsReadWithAllItsFields() throws Exception {
    Structure structure = read(LIDDING).find("LID-60").orElseThrow();

    assertThat(structure.name()).isEqualTo("Barrier lidding film, 60 µm");
    assertThat(structure.layers())
        .extracting(Layer::name)
        .containsExactly("Outer skin", "Tie", "Barrier", "Inner tie", "Seal");
    Layer skin = structure.layers().get(0);
    assertThat(skin.role()).isEqualTo(Role.SKIN);
    assertThat(skin.resin()).contains("LDPE");
    assertThat(skin.individual()).isEqualTo(SpecLimits.of(12.6, 14, 15.4));
    assertThat(skin.average().lower()).hasValue(13.3);
    assertThat(skin.average().upper()).hasValue(14.7);
    assertThat(skin.average().target()).isEmpty();
    assertThat(skin.densityGcm3()).hasValue(0.922);
    assertThat(skin.extruder()).contains("A");
    assertThat(skin.velocityMps()).hasValue(1950);
    assertThat(skin.greatestUm()).hasValue(25);
  }

  @Test
  void whatIsOptionalMayBeLeftOut() throws Exception {
    Layer barrier = read(LIDDING).find("LID-60").orElseThrow().layers().get(2);

    assertThat(barrier.resin()).isEmpty();
    assertThat(barrier.individual().lower()).isEmpty();
    assertThat(barrier.average()).isEqualTo(SpecLimits.NONE);
    assertThat(barrier.densityGcm3()).isEmpty();
    assertThat(barrier.extruder()).isEmpty();
    assertThat(barrier.velocityMps()).isEmpty();
    assertThat(barrier.greatestUm()).isEmpty();
  }

  @Test
  void lengthsOfEveryUnitAreMicrometres() throws Exception {
    SpecLimits barrier = read(LIDDING).find("LID-60").orElseThrow().layers().get(2).individual();

    assertThat(barrier.target().orElseThrow()).isEqualTo(0.2 * 25.4); // 1 mil = 25.4 um exactly
    assertThat(barrier.upper().orElseThrow()).isEqualTo(0.006 * 1000);
  }

  @Test
  void limitsOfTheTotalMayBeForPointsAndForAverages() throws Exception {
    Structure structure = read(LIDDING).find("LID-60").orElseThrow();

    assertThat(structure.total()).isEqualTo(SpecLimits.of(57, 60, 63));
    assertThat(structure.totalAverage().lower()).hasValue(58);
    assertThat(structure.totalAverage().upper()).isEmpty();
  }

  @Test
  void aGroupIsNamedAfterItsMembersAndHasTheSumOfTheirLimits() throws Exception {
    List<ReportedLayer> reported = read(LIDDING).find("LID-60").orElseThrow().reported();

    assertThat(reported)
        .extracting(ReportedLayer::name)
        .containsExactly("Outer skin + Tie", "Barrier", "Inner tie + Seal");
    assertThat(reported).extracting(ReportedLayer::position).containsExactly(1, 2, 3);
    SpecLimits outer = reported.get(0).individual();
    assertThat(outer.lower().orElseThrow()).isCloseTo(12.6 + 3, within(1e-12));
    assertThat(outer.target().orElseThrow()).isCloseTo(14 + 4, within(1e-12));
    assertThat(outer.upper().orElseThrow()).isCloseTo(15.4 + 5, within(1e-12));
  }

  @Test
  void aGroupHasNoLimitThatOneOfItsMembersLacks() throws Exception {
    // the tie states nothing for averages
    assertThat(read(LIDDING).find("LID-60").orElseThrow().reported().get(0).average())
        .isEqualTo(SpecLimits.NONE);
  }

  @Test
  void whatAGroupStatesReplacesTheSumPartByPart() throws Exception {
    Structures structures =
        read(
            LIDDING.replace(
                "[[Outer skin, Tie], [Barrier], [Inner tie, Seal]]",
                "[{layers: [Outer skin, Tie], name: Outside, lower: 16 um,"
                    + " average: {upper: 19 um}}, [Barrier], [Inner tie, Seal]]"));

    ReportedLayer outside = structures.find("LID-60").orElseThrow().reported().get(0);
    assertThat(outside.name()).isEqualTo("Outside");
    assertThat(outside.individual().lower()).hasValue(16);
    assertThat(outside.individual().target()).hasValue(14 + 4);
    assertThat(outside.average().upper()).hasValue(19);
    assertThat(outside.average().lower()).isEqualTo(OptionalDouble.empty());
  }

  @Test
  void withoutGroupsEveryLayerIsReportedByItself() throws Exception {
    Structure structure =
        read(LIDDING.replaceAll("(?m)^ *reported:.*\n", "")).find("LID-60").orElseThrow();

    assertThat(structure.reported())
        .extracting(ReportedLayer::name)
        .containsExactly("Outer skin", "Tie", "Barrier", "Inner tie", "Seal");
    assertThat(structure.reported().get(0).average())
        .isEqualTo(structure.layers().get(0).average());
  }

  @Test
  void aNameMayBeUsedTwiceWhereGroupsKeepThemApart() throws Exception {
    Structure structure =
        read(LIDDING
                .replace("name: Inner tie", "name: Tie")
                .replace("[Inner tie, Seal]", "[Tie, Seal]"))
            .find("LID-60")
            .orElseThrow();

    assertThat(structure.reported())
        .extracting(ReportedLayer::name)
        .containsExactly("Outer skin + Tie", "Barrier", "Tie + Seal");
  }

  @Test
  void aCodeStaysAsItIsWritten() throws Exception {
    String yaml =
        """
        structures:
          - code: 0070
            layers: [{name: no, role: core}]
        """;

    Structure structure = read(yaml).find("0070").orElseThrow();

    assertThat(structure.name()).isEqualTo("0070");
    assertThat(structure.layers().get(0).name()).isEqualTo("no");
  }

  @Test
  void structuresKeepTheirOrder() throws Exception {
    String yaml =
        """
        structures:
          - {code: Z, layers: [{name: a, role: core}]}
          - {code: A, layers: [{name: a, role: core}]}
        """;

    assertThat(read(yaml).all()).extracting(Structure::code).containsExactly("Z", "A");
  }

  @Test
  void theFileMayBeInAnyEncodingThatReadingsMayBe() throws Exception {
    for (String charset : List.of("windows-1252", "UTF-16", "UTF-16LE", "UTF-8")) {
      Structures structures =
          StructuresFile.read(new ByteArrayInputStream(LIDDING.getBytes(charset)), "s.yaml");

      assertThat(structures.find("LID-60").orElseThrow().name())
          .as(charset)
          .isEqualTo("Barrier lidding film, 60 µm");
    }
  }
}
