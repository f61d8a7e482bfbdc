package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is wrong in a structures file is said with where, what, and what instead. */
class StructuresFaultTest {

  static StructuresFault faultOf(String yaml) {
    return catchThrowableOfType(StructuresFault.class, () -> StructuresFileTest.read(yaml));
  }

  static Stream<Arguments> edits() {
    return Stream.of(
        edit(
            "density: 0.922",
            "densty: 0.922",
            12,
            "layer 1 (Outer skin)",
            "\"densty\" is not a known key",
            "nearest key is \"density\""),
        edit("total:", "totl:", 20, "structure LID-60", "\"totl\"", "\"total\""),
        edit(
            "average: {lower: 13.3 um",
            "average: {lowr: 13.3 um",
            11,
            "layer 1 (Outer skin), average",
            "\"lowr\"",
            "\"lower\""),
        edit(
            "target: 14 um",
            "target: 14",
            8,
            "layer 1 (Outer skin), target",
            "\"14\" is not a length",
            "for example 14 um"),
        edit("target: 14 um", "target: 14 furlong", 8, "\"14 furlong\"", "um, mm, mil or in"),
        edit("target: 14 um", "target: 14,5 um", 8, "\"14,5 um\" is not a length"),
        edit("target: 14 um", "target: 1e999 um", 8, "finite"),
        edit("target: 14 um", "target: 0 um", 8, "\"0 um\" is not above zero"),
        edit("lower: 12.6 um", "lower: -1 um", 9, "\"-1 um\" is not zero or above"),
        edit("target: 14 um", "target: [14 um]", 8, "a list stands where there should be a text"),
        edit(
            "lower: 12.6 um",
            "lower: 16 um",
            9,
            "layer 1 (Outer skin), lower",
            "16.0 um is not below the upper limit of 15.4 um"),
        edit(
            "lower: 12.6 um",
            "lower: 15.4 um",
            9,
            "15.4 um is not below the upper limit of 15.4 um"),
        edit(
            "role: skin",
            "role: skn",
            6,
            "layer 1 (Outer skin), role",
            "\"skn\" is not a role",
            "skin, core, tie, barrier, seal"),
        edit("        role: skin\n", "", 5, "layer 1 (Outer skin), role", "is missing"),
        edit("- name: Outer skin\n        role", "- role", 5, "layer 1, name", "is missing"),
        edit("code: LID-60", "kode: LID-60", 2, "structure number 1, code", "is missing"),
        edit(
            "density: 0.922",
            "density: 0,922",
            12,
            "density",
            "\"0,922\" is not a number above zero"),
        edit("velocity: 1950", "velocity: 1950 m/s", 14, "velocity", "without a unit"),
        edit("velocity: 1950", "velocity: -5", 14, "above zero"),
        edit(
            "[Barrier]",
            "[Barier]",
            21,
            "reported, group 2",
            "\"Barier\" is not a layer of this structure",
            "the nearest is \"Barrier\""),
        edit(
            "[[Outer skin, Tie], [Barrier]",
            "[[Outer skin, Barrier], [Tie]",
            21,
            "group 1",
            "\"Barrier\" does not follow here",
            "the next layer is \"Tie\""),
        edit("[Inner tie, Seal]", "[Inner tie]", 21, "\"Seal\" is in no group"),
        edit(
            "[Inner tie, Seal]",
            "[Inner tie, Seal, Seal]",
            21,
            "\"Seal\" does not follow here",
            "no layer is left"),
        edit("[Barrier]", "[]", 21, "group 2", "should list the layers"),
        edit("[Barrier]", "{name: Middle}", 21, "group 2", "should list the layers"),
        edit("[Barrier]", "{layers: [Barrier], nme: Middle}", 21, "\"nme\"", "\"name\""),
        edit("[Barrier]", "Barrier", 21, "group 2", "should list the layers"),
        edit(
            "reported: [[Outer skin, Tie], [Barrier], [Inner tie, Seal]]",
            "reported: all",
            21,
            "reported",
            "\"all\" stands where there should be a list"),
        edit(
            "[Barrier]",
            "{layers: [Barrier], name: Outer skin + Tie}",
            4,
            "two reported layers are named \"Outer skin + Tie\""),
        edit("[Barrier]", "{layers: [Barrier], name: 1}", 4, "\"1\" would be taken for a position"),
        edit(
            "[Barrier]",
            "{layers: [Barrier], lower: 9 um}",
            21,
            "9.0 um is not below the upper limit of 6.0 um"),
        edit("total: {", "total: {lower: 1 um, ", 20, "\"lower\" is given twice"));
  }

  private static Arguments edit(String from, String to, int line, String... words) {
    return Arguments.of(from, to, line, words);
  }

  @ParameterizedTest(name = "{0} -> {1}")
  @MethodSource("edits")
  void aFaultSaysWhereWhatAndWhatInstead(String from, String to, int line, String[] words) {
    assertThat(StructuresFileTest.LIDDING).contains(from);

    StructuresFault fault = faultOf(StructuresFileTest.LIDDING.replace(from, to));

    assertThat(fault.faults())
        .anySatisfy(
            message ->
                assertThat(message)
                    .startsWith("structures.yaml, line " + line + ", ")
                    .contains(words));
  }

  @Test
  void allFaultsAreGivenTogether() {
    StructuresFault fault =
        faultOf(
            StructuresFileTest.LIDDING
                .replace("14 um", "14")
                .replace("role: skin", "role: hide")
                .replace("velocity: 1950", "velocity: fast")
                .replace("[Barrier]", "[Barrel]"));

    assertThat(fault.faults()).hasSize(4);
    assertThat(fault.getMessage().lines()).isEqualTo(fault.faults());
  }

  @Test
  void twoStructuresMayNotShareACode() {
    String yaml =
        """
        structures:
          - {code: A, layers: [{name: a, role: core}]}
          - {code: A, layers: [{name: b, role: core}]}
        """;

    assertThat(faultOf(yaml).faults())
        .containsExactly(
            "structures.yaml, line 3, structure A is there twice;"
                + " give every structure a code of its own");
  }

  @Test
  void layersOfTheSameNameMustBeToldApart() {
    String yaml =
        """
        structures:
          - code: A
            layers: [{name: Tie, role: tie}, {name: Core, role: core}, {name: Tie, role: tie}]
        """;

    assertThat(faultOf(yaml).getMessage())
        .isEqualTo(
            "structures.yaml, line 3, structure A, layers:"
                + " two reported layers are named \"Tie\"; rename one");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "   ",
        "# nothing but a comment",
        "structures:",
        "structures: []",
        "structures: lots",
        "- code: A",
        "just a text",
        "{}",
        "structures: [{code: A}]",
        "structures: [{code: A, layers: []}]",
        "structures: [{code: A, layers: none}]",
        "structures: [A]",
        "structures: [[[]]]",
        "structures: [{code: {}, layers: [[]]}]",
        "structures: {code: A",
        "\tstructures: []",
        "structures: [\"\u0000\"]",
        "? [a]\n: b",
        "structures: &a [*a]",
        "structures: !!javax.script.ScriptEngineManager [A]",
        "--- \n--- \n",
      })
  void whatHoldsNoStructureIsAFault(String yaml) {
    assertThat(faultOf(yaml).getMessage()).startsWith("structures.yaml, line ");
  }

  @Test
  void aliasesAreNotFollowed() {
    StringBuilder bomb = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
    for (int i = 1; i < 30; i++) {
      String before = "*a" + (i - 1);
      bomb.append("a" + i + ": &a" + i + " [" + (before + ", ").repeat(8) + before + "]\n");
    }
    bomb.append("structures: *a29\n");

    assertThat(faultOf(bomb.toString()).getMessage())
        .contains("line 2, *a0 is an alias; write out what it stands for");
  }

  @Test
  void deepNestingIsAFault() {
    assertThat(faultOf("structures: " + "[".repeat(100_000)).getMessage()).contains("not YAML");
    assertThat(faultOf("structures: " + "{a: ".repeat(100_000)).getMessage()).contains("not YAML");
  }

  @Test
  void aHugeFileIsNotRead() {
    String yaml = StructuresFileTest.LIDDING + "# " + "x".repeat(4 * 1024 * 1024);

    assertThat(faultOf(yaml).getMessage()).contains("larger than 4 MB");
  }

  @Test
  void thereIsAnEndToTheFaultsListed() {
    String yaml = "structures:\n" + "  - {code: 1, layers: [{name: a}]}\n".repeat(1000);

    assertThat(faultOf(yaml).faults()).hasSize(201);
    assertThat(faultOf(yaml).getMessage()).endsWith("more faults");
  }

  @Test
  void anyBytesAreAFaultAndNeverAnythingElse() throws Exception {
    for (int seed = 0; seed < 300; seed++) {
      byte[] bytes = StructuresFileTest.LIDDING.getBytes("UTF-8");
      Random random = new Random(seed);
      for (int i = 0; i < 1 + seed / 20; i++) {
        bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
      }
      try {
        StructuresFile.read(new ByteArrayInputStream(bytes), "structures.yaml");
      } catch (StructuresFault fault) {
        assertThat(fault.faults()).as("seed " + seed).isNotEmpty();
      }
    }
  }
}
