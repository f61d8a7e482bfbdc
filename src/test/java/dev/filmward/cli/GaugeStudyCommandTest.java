package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.filmward.web.SmallFilm;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code filmward gauge-study FILE}: what it prints, and its exit status. */
class GaugeStudyCommandTest {
  /**
   * Two parts, two operators, two trials in um; GaugeStudyTest works the same numbers out by hand:
   * squares 288, 32, 8, 12, components 70, 6, 2.5, 3.
   */
  private static final String STUDY =
      """
      part,operator,trial,layer,thickness_um
      1,Ann,1,Skin,10
      1,Ann,2,Skin,12
      1,Bo,1,Skin,11
      1,Bo,2,Skin,15
      2,Ann,1,Skin,20
      2,Ann,2,Skin,22
      2,Bo,1,Skin,27
      2,Bo,2,Skin,27
      """;

  @TempDir private Path folder;

  @Test
  void printsOneObjectWithTheKeysThatStay() throws Exception {
    Outcome outcome = json(STUDY);
    assertThat(outcome.status()).as(outcome.err()).isZero();
    JsonNode study = only(outcome);
    assertThat(study.get("layer").asText()).isEqualTo("Skin");
    assertThat(study.get("parts").asInt()).isEqualTo(2);
    assertThat(study.get("operators").asInt()).isEqualTo(2);
    assertThat(study.get("trials").asInt()).isEqualTo(2);
    assertThat(study.at("/anova/part/ss").asDouble()).isEqualTo(288);
    assertThat(study.at("/anova/part/df").asInt()).isEqualTo(1);
    assertThat(study.at("/anova/part/ms").asDouble()).isEqualTo(288);
    assertThat(study.at("/anova/part/f").asDouble()).isEqualTo(36);
    assertThat(study.at("/anova/part/p").asDouble())
        .isCloseTo(1 - 2 / Math.PI * Math.atan(6), within(1e-12));
    assertThat(study.at("/anova/operator/ss").asDouble()).isEqualTo(32);
    assertThat(study.at("/anova/interaction/ss").asDouble()).isEqualTo(8);
    assertThat(study.at("/anova/repeatability/ss").asDouble()).isEqualTo(12);
    assertThat(study.at("/anova/repeatability/df").asInt()).isEqualTo(4);
    assertThat(study.get("interactionPooled").asBoolean(true)).isFalse();
    assertThat(study.at("/variance/reproducibility").asDouble()).isEqualTo(8.5);
    assertThat(study.at("/variance/gauge").asDouble()).isEqualTo(11.5);
    assertThat(study.at("/variance/raw/part").asDouble()).isEqualTo(70);
    assertThat(study.get("percentStudyVariation").asDouble())
        .isCloseTo(100 * Math.sqrt(11.5 / 81.5), within(1e-10));
    assertThat(study.get("percentTolerance").isNull()).isTrue();
    assertThat(study.get("distinctCategories").asInt()).isEqualTo(3);
  }

  @Test
  void takesTolerancesFromAStructure() throws Exception {
    Path structures = Files.writeString(folder.resolve("film.yaml"), SmallFilm.STRUCTURES);
    // 17 to 23 um, so 6 sqrt(11.5)/6
    double expected = 100 * Math.sqrt(11.5);
    for (String layer : new String[] {"Skin", "1"}) {
      Outcome outcome =
          json(
              STUDY.replace("Skin", layer),
              "--structures",
              structures.toString(),
              "--structure",
              "DUO-50");
      assertThat(only(outcome).get("percentTolerance").asDouble())
          .isCloseTo(expected, within(1e-9));
    }
    Outcome total = json(STUDY.replace("Skin", "total"), "--structures", structures.toString());
    assertThat(only(total).get("percentTolerance").asDouble())
        .isCloseTo(100 * 6 * Math.sqrt(11.5) / 10, within(1e-9));
    Outcome other = json(STUDY.replace("Skin", "Core"), "--structures", structures.toString());
    assertThat(other.status()).isZero();
    assertThat(only(other).get("percentTolerance").isNull()).isTrue();
    assertThat(other.err()).contains("\"Core\"").contains("\"Seal\"");
  }

  @Test
  void theWayAFileIsWrittenChangesNothing() throws Exception {
    String expected = json(STUDY).out();
    String wide = STUDY.replace(",", ";").replace("thickness_um", "Thickness [\u00b5m]");
    String comma = wide.replace(";10\n", ";10,0\n").replace(";27\n", ";2,7e1\n");
    assertThat(written(comma, StandardCharsets.UTF_16LE)).isEqualTo(expected);
    assertThat(written(comma.replace("\n", "\r\n"), Charset.forName("windows-1252")))
        .isEqualTo(expected);
    assertThat(written("\uFEFF" + STUDY.replace(",", "\t"), StandardCharsets.UTF_8))
        .isEqualTo(expected);
    String other = STUDY.replace("part,operator,trial,layer", "Part,OPERATOR,trial,layer");
    assertThat(written(other.replace("1,Ann,1", "\"1\",Ann,1"), StandardCharsets.UTF_8))
        .isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource({"mm, 1000", "mil, 25.4", "in, 25400"})
  void lengthsOfOtherUnitsBecomeMicrometres(String unit, double micrometres) throws Exception {
    JsonNode study = only(json(STUDY.replace("thickness_um", "thickness_" + unit)));
    assertThat(study.at("/variance/gauge").asDouble() / (micrometres * micrometres))
        .isCloseTo(11.5, within(1e-9));
  }

  @Test
  void aFileOfOneLayerMayLeaveTheLayerOut() throws Exception {
    JsonNode study = only(json(STUDY.replace(",layer", "").replace(",Skin", "")));
    assertThat(study.get("layer").asText()).isEqualTo("1");
    assertThat(study.at("/variance/gauge").asDouble()).isEqualTo(11.5);
  }

  @Test
  void layersAreStudiedInTheOrderOfTheFile() throws Exception {
    String second = STUDY.lines().skip(1).reduce("", (a, b) -> a + b + "\n");
    Outcome outcome = json(STUDY + second.replace("Skin", "Seal"));
    JsonNode studies = new ObjectMapper().readTree(outcome.out()).get("studies");
    assertThat(studies.findValuesAsText("layer")).containsExactly("Skin", "Seal");
  }

  @Test
  void textSaysTheVerdictAndWhereItsRuleComesFrom() throws Exception {
    Outcome outcome = Outcome.of("gauge-study", file(STUDY).toString());
    assertThat(outcome.status()).isZero();
    assertThat(outcome.out())
        .contains("Layer Skin: 2 parts, 2 operators, 2 trials")
        .contains("37.6 % of the study variation")
        .contains("not acceptable")
        .contains("No tolerance is known")
        .contains("Measurement Systems Analysis")
        .contains("coupled anew");
  }

  @Test
  void withOneOperatorItSaysThatReproducibilityCannotBeTold() throws Exception {
    String one = STUDY.replace("Bo,1", "Ann,3").replace("Bo,2", "Ann,4");
    Outcome outcome = Outcome.of("gauge-study", file(one).toString());
    assertThat(outcome.status()).isZero();
    assertThat(outcome.out()).contains("reproducibility cannot be told");
    JsonNode study = only(json(one));
    assertThat(study.at("/anova/operator").isNull()).isTrue();
    assertThat(study.at("/variance/reproducibility").isNull()).isTrue();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          2,Bo,2,Skin,27   |                   | part "2" by operator "Bo" has 1 trial
          2,Bo,2,Skin,27   | 2,Bo,2,Skin,-     | part "2" by operator "Bo" has 1 trial
          2,Bo,2,Skin,27   | 2,Bo,1,Skin,27    | twice
          2,Bo,2,Skin,27   | 2,Bo,2,Skin,thick | line 9 (thickness_um): "thick" is not a number
          2,Bo,2,Skin,27   | 2,Bo,2,Skin,0     | not above zero
          2,Bo,2,Skin,27   | 2,,2,Skin,27      | operator is empty
          2,Bo,2,Skin,27   | 2,Bo,2,27         | 4 fields where the header has 5
          operator         | person            | "operator" is missing
          thickness_um     | thickness         | does not say its unit
          """)
  void whatIsNoStudyIsThreeWithWhereAndWhat(String found, String instead, String said)
      throws Exception {
    String broken = STUDY.replaceFirst(found, instead == null ? "" : instead);
    Outcome outcome = json(broken);
    assertThat(outcome.status()).isEqualTo(3);
    assertThat(outcome.out()).isEmpty();
    assertThat(outcome.err()).contains(said).doesNotContain("Exception");
  }

  @Test
  void layersThatCanBeStudiedAreStudiedBesideOneThatCannot() throws Exception {
    Outcome outcome = json(STUDY + "1,Ann,1,Seal,30\n");
    assertThat(outcome.status()).isEqualTo(3);
    assertThat(only(outcome).get("layer").asText()).isEqualTo("Skin");
    assertThat(outcome.err()).contains("layer Seal");
  }

  @Test
  void aFileThatIsMissingOrEmptyIsThreeAndWrongUseIsTwo() throws Exception {
    assertThat(Outcome.of("gauge-study", folder.resolve("gone.csv").toString()).status())
        .isEqualTo(3);
    assertThat(json("part,operator,trial,thickness_um\n").status()).isEqualTo(3);
    assertThat(json("").status()).isEqualTo(3);
    assertThat(Outcome.of("gauge-study").status()).isEqualTo(2);
    assertThat(Outcome.of("gauge-study", file(STUDY).toString(), "--format", "xml").status())
        .isEqualTo(2);
    Outcome where = json(STUDY, "--structure", "DUO-50");
    assertThat(where.status()).isEqualTo(2);
    assertThat(where.err()).contains("--structures FILE");
    Path structures = Files.writeString(folder.resolve("film.yaml"), SmallFilm.STRUCTURES);
    Outcome which = json(STUDY, "--structures", structures.toString(), "--structure", "TRIO");
    assertThat(which.status()).isEqualTo(2);
    assertThat(which.err()).contains("\"TRIO\"").contains("\"DUO-50\"");
  }

  /** Skin of part 1 reads 10 12 11 15, of part 2 20 22 27 27: means 12 and 24. */
  @Test
  void withKnownThicknessesItSaysTheBiasAndHowItGoesWithThickness() throws Exception {
    String known =
        STUDY
            .replace("thickness_um", "thickness_um,reference_mm")
            .replaceAll("(?m)^(1,.*)$", "$1,0.011")
            .replaceAll("(?m)^(2,.*)$", "$1,0.021");
    JsonNode references = new ObjectMapper().readTree(json(known).out()).get("references");
    assertThat(references.at("/0/layer").asText()).isEqualTo("Skin");
    assertThat(references.at("/0/bias/0/bias").asDouble()).isCloseTo(12 - 11, within(1e-9));
    assertThat(references.at("/0/bias/1/bias").asDouble()).isCloseTo(24 - 21, within(1e-9));
    // from 1 at 11 um to 3 at 21 um
    assertThat(references.at("/0/linearity/slope/value").asDouble()).isCloseTo(0.2, within(1e-9));
    Outcome text = Outcome.of("gauge-study", file(known).toString());
    assertThat(text.out()).contains("bias on known pieces").contains("x thickness");
  }

  @Test
  void onePieceOfKnownThicknessIsEnoughForABias() throws Exception {
    String piece =
        """
        part,operator,trial,thickness_um,reference_um
        foil,Ann,1,10.2,10
        foil,Ann,2,10.4,10
        """;
    Outcome outcome = json(piece);
    assertThat(outcome.status()).isZero();
    assertThat(outcome.err()).contains("one part only");
    JsonNode answer = new ObjectMapper().readTree(outcome.out());
    assertThat(answer.get("studies")).isEmpty();
    assertThat(answer.at("/references/0/bias/0/bias").asDouble()).isCloseTo(0.3, within(1e-9));
    assertThat(answer.at("/references/0/linearity").isNull()).isTrue();
  }

  private String written(String text, Charset charset) throws Exception {
    Path file = Files.write(folder.resolve("written.csv"), text.getBytes(charset));
    Outcome outcome = Outcome.of("gauge-study", file.toString(), "--format", "json");
    assertThat(outcome.err()).isEmpty();
    return outcome.out();
  }

  private Path file(String text) throws Exception {
    return Files.writeString(folder.resolve("study.csv"), text);
  }

  private Outcome json(String text, String... options) throws Exception {
    String[] arguments = new String[options.length + 4];
    arguments[0] = "gauge-study";
    arguments[1] = file(text).toString();
    arguments[2] = "--format";
    arguments[3] = "json";
    System.arraycopy(options, 0, arguments, 4, options.length);
    return Outcome.of(arguments);
  }

  private static JsonNode only(Outcome outcome) throws Exception {
    JsonNode studies = new ObjectMapper().readTree(outcome.out()).get("studies");
    assertThat(studies).as(outcome.err()).hasSize(1);
    return studies.get(0);
  }
}
