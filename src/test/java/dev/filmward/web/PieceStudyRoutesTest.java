package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.gauge.study.GaugeStudy;
import dev.filmward.people.Role;
import dev.filmward.stats.Figures;
import dev.filmward.store.TestDatabase;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Studies of pieces of known thickness over HTTP, with published examples; ReferenceStudyTest and
 * FlowWidthTest say where their figures come from.
 */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class PieceStudyRoutesTest {
  private static final String STUDIES = "/api/v1/gauge-studies";
  private static final String HEADER = "part,operator,trial,thickness_um\n";

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(database, folder);
    api = served.api();
  }

  @AfterEach
  void stop() {
    served.close();
  }

  /** Readings of five parts, 12 each. Printed: bias = 0.7367 - 0.1317 x, R² 0.714, s 0.23954. */
  @Test
  void linearityOverFivePiecesIsThePrintedOneAndStandsAfterARestart() throws Exception {
    String study = plan("linearity", pieces("2", "4", "6", "8", "10"), "\"trials\": 12");
    assertThat(api.get(study).json().get("steps")).hasSize(60);
    assertThat(file(study, fiveReferences()).json().get("new").asInt()).isEqualTo(60);
    served.close();
    served = ServedPlant.in(database, folder);
    api = served.api();

    JsonNode whole = api.get(study).json();
    assertThat(whole.get("kind").asText()).isEqualTo("linearity");
    assertThat(whole.at("/pieces/4/thicknessUm").asDouble()).isEqualTo(10);
    assertThat(whole.at("/pieces/4/expandedUm").asDouble()).isEqualTo(0.02);
    JsonNode line = whole.at("/references/0/linearity");
    assertThat(line.at("/slope/value").asDouble()).isCloseTo(-0.1317, within(5e-5));
    assertThat(line.at("/intercept/value").asDouble()).isCloseTo(0.7367, within(5e-5));
    assertThat(line.get("rSquared").asDouble()).isCloseTo(0.714, within(5e-4));
    assertThat(line.get("s").asDouble()).isCloseTo(0.23954, within(5e-6));
    assertThat(line.at("/slope/t").asDouble()).isCloseTo(-12.043, within(5e-4));
    assertThat(whole.at("/references/0/bias/4/bias").asDouble()).isCloseTo(-0.616667, within(4e-6));
    assertThat(whole.at("/judged/linearity/verdict").asText()).isEqualTo("with-thickness");
    JsonNode middle = whole.at("/judged/linearity/band/20");
    assertThat(middle.get("referenceUm").asDouble()).isCloseTo(6, within(1e-12));
    // at the mean of all pieces the line goes through the mean bias, -0.0533
    assertThat(middle.get("bias").asDouble()).isCloseTo(-0.05333, within(1e-5));
    assertThat(whole.at("/judged/bias/0/verdict").asText()).isEqualTo("real");
    assertThat(whole.at("/judged/bias/1/verdict").asText()).isEqualTo("none-seen");
  }

  /** The first of the five parts: 0.491667, from 0.412874 to 0.570460, computed apart. */
  @Test
  void biasIsToldWhenAllReadingsAreThereAndWeighedAgainstTheReference() throws Exception {
    String study = plan("bias", pieces("2"), "\"trials\": 12, \"layer\": \"Skin\"");
    String rows = fiveReferences().replaceAll("(?m)^(4|6|8|10),.*\n", "");
    String eleven = rows.replaceAll("(?m)^2,Kim,12,.*\n", "");
    assertThat(file(study, eleven).json().get("new").asInt()).isEqualTo(11);
    JsonNode open = api.get(study).json();
    assertThat(open.get("references")).isEmpty();
    assertThat(open.at("/refused/0/reasons/0").asText()).isEqualTo("1 reading of 12 is missing");
    assertThat(api.post(study + "/finish", "{\"conclusion\": \"off\"}").status()).isEqualTo(409);
    assertThat(file(study, rows).json().get("known").asInt()).isEqualTo(11);

    JsonNode whole = api.get(study).json();
    JsonNode bias = whole.at("/references/0/bias/0");
    assertThat(bias.get("bias").asDouble()).isCloseTo(0.491667, within(4e-6));
    assertThat(bias.get("lower").asDouble()).isCloseTo(0.412873683286904, within(1e-9));
    assertThat(bias.get("upper").asDouble()).isCloseTo(0.570459650046429, within(1e-9));
    assertThat(bias.get("t").asDouble()).isCloseTo(13.734104112156226, within(1e-8));
    JsonNode judged = whole.at("/judged/bias/0");
    // half the interval with twice the standard uncertainty, 0.02/2
    assertThat(judged.get("combinedUm").asDouble())
        .isCloseTo(Math.hypot(0.0787929833797625, 0.02), within(1e-9));
    // six deviations of 0.124011 in the 6 um between 17 and 23
    assertThat(judged.at("/repeats/percentTolerance").asDouble())
        .isCloseTo(100 * 6 * 0.12401124093721465 / 6, within(1e-6));
    assertThat(judged.get("source").asText()).contains("Measurement Systems Analysis");
    assertThat(api.post(study + "/finish", "{\"conclusion\": \"off\"}").status()).isEqualTo(200);
    JsonNode listed = api.get(STUDIES).json().at("/studies/0");
    assertThat(listed.get("kind").asText()).isEqualTo("bias");
    assertThat(listed.at("/ended/by").asText()).isEqualTo("Kim");
  }

  /** Printed: centre 1.5056, limits 1.31795 and 1.69325, ranges 0.32521 up to 0.68749. */
  @Test
  void stabilityOverDatesHasThePrintedLimitsOfMeansAndRanges() throws Exception {
    String study =
        plan("stability", pieces("1.5"), "\"perDate\": 5, \"dates\": " + dates("2026-10-01", 25));
    assertThat(api.get(study).json().at("/steps/5/date").asText()).isEqualTo("2026-10-02");
    StringBuilder csv = new StringBuilder(HEADER);
    int trial = 1;
    for (double[] sample : Figures.rows(MeanRangeLimits.class, "flow-width-phase1.csv")) {
      for (double um : sample) {
        csv.append("1.5,Kim," + trial++ + "," + um + "\n");
      }
    }
    assertThat(file(study, csv.toString()).json().get("new").asInt()).isEqualTo(125);
    JsonNode stability = api.get(study).json().at("/judged/stability");
    assertThat(stability.get("basis").asText()).isEqualTo("means");
    assertThat(stability.at("/limits/level/centre").asDouble()).isCloseTo(1.5056, within(2e-4));
    assertThat(stability.at("/limits/level/lower").asDouble()).isCloseTo(1.31795, within(2e-4));
    assertThat(stability.at("/limits/level/upper").asDouble()).isCloseTo(1.69325, within(2e-4));
    assertThat(stability.at("/limits/spread/centre").asDouble()).isCloseTo(0.32521, within(2e-4));
    assertThat(stability.at("/limits/spread/upper").asDouble()).isCloseTo(0.68749, within(2e-4));
    assertThat(stability.get("verdict").asText()).isEqualTo("stable");
    assertThat(stability.get("points")).hasSize(25);
  }

  /** As CheckStandardTest: 10 and 11 in turn, one of 19 and the jump back; limits as it says. */
  @Test
  void singleReadingsAreJudgedByTheirMovingRanges() {
    String study =
        plan("stability", pieces("10"), "\"perDate\": 1, \"dates\": " + dates("2026-10-01", 30));
    StringBuilder csv = new StringBuilder(HEADER);
    for (int i = 0; i < 30; i++) {
      csv.append("10,Kim," + (i + 1) + "," + (i == 17 ? 19 : 10 + i % 2) + "\n");
    }
    file(study, csv.toString());
    JsonNode stability = api.get(study).json().at("/judged/stability");
    assertThat(stability.get("verdict").asText()).isEqualTo("not-stable");
    assertThat(stability.at("/limits/spread/upper").asDouble())
        .isCloseTo(3.267 * 45 / 29, within(5e-3));
    assertThat(stability.at("/limits/beyond").toString()).isEqualTo("[17,18]");
  }

  @Test
  void whatIsNoPlanOrNoReadingOfItIsRefusedWithWhatToDo() {
    assertThat(post("linearity", pieces("2"), "\"trials\": 5").text())
        .contains("at least two thicknesses");
    assertThat(post("bias", pieces("2", "4"), "\"trials\": 5").text())
        .contains("one reference piece, not 2");
    assertThat(post("bias", pieces("2"), "\"trials\": 1").text()).contains("2 to 200");
    assertThat(post("drift", pieces("2"), "\"trials\": 5").text()).contains("not \\\"drift\\\"");
    assertThat(post("bias", pieces("0"), "\"trials\": 5").text()).contains("above 0");
    assertThat(post("bias", pieces("2"), "\"trials\": 5, \"layer\": \"Tie\"").status())
        .isEqualTo(404);
    String few = "\"perDate\": 1, \"dates\": " + dates("2026-10-01", 19);
    assertThat(post("stability", pieces("2"), few).text()).contains("20 to 200 dates, not 19");
    String ahead = "\"perDate\": 1, \"dates\": " + dates("2026-11-20", 20);
    String study = plan("stability", pieces("2"), ahead);
    assertThat(file(study, HEADER + "2,Kim,1,2.1\n").status()).isEqualTo(200);
    assertThat(file(study, HEADER + "2,Kim,2,2.1\n").text()).contains("still to come");
    Answer other = file(study, "part,operator,trial,thickness_um,reference_um\n2,Kim,1,2.1,3\n");
    assertThat(other.status()).isEqualTo(422);
    assertThat(other.text()).contains("not the thickness that part");
  }

  @Test
  void aViewerLooksAndPlansNothing() {
    Api lee = served.as("Lee", Role.VIEWER);
    String study = plan("bias", pieces("2"), "\"trials\": 5");
    assertThat(lee.get(study).status()).isEqualTo(200);
    assertThat(lee.post(STUDIES, body("bias", pieces("2"), "\"trials\": 5")).status())
        .isEqualTo(403);
    assertThat(lee.post(study + "/readings", "{\"readings\": []}").status()).isEqualTo(403);
  }

  private static String fiveReferences() {
    StringBuilder csv = new StringBuilder(HEADER);
    Map<String, Integer> trials = new HashMap<>();
    for (Map<String, String> row : Figures.table(GaugeStudy.class, "five-references.csv")) {
      String part = row.get("reference");
      int trial = trials.merge(part, 1, Integer::sum);
      csv.append(part + ",Kim," + trial + "," + row.get("thickness_um") + "\n");
    }
    return csv.toString();
  }

  private static String pieces(String... um) {
    List<String> pieces = new ArrayList<>();
    for (String each : um) {
      pieces.add(
          "{\"name\": \""
              + each
              + "\", \"thicknessUm\": "
              + each
              + ", \"expandedUm\": "
              + (each.equals("0") ? "0" : "0.02")
              + "}");
    }
    return pieces.toString();
  }

  private static String dates(String first, int count) {
    List<String> dates = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      dates.add("\"" + LocalDate.parse(first).plusDays(i) + "\"");
    }
    return dates.toString();
  }

  private static String body(String kind, String pieces, String more) {
    return """
        {"kind": "%s", "gauge": "Gauge 3", "structure": "DUO-50", "purpose": "yearly",
         "operators": ["Kim"], "pieces": %s, %s}
        """
        .formatted(kind, pieces, more);
  }

  private Answer post(String kind, String pieces, String more) {
    return api.post(STUDIES, body(kind, pieces, more));
  }

  private String plan(String kind, String pieces, String more) {
    Answer planned = post(kind, pieces, more);
    assertThat(planned.status()).as(planned.text()).isEqualTo(200);
    return STUDIES + "/" + planned.json().get("id").asLong();
  }

  private Answer file(String study, String csv) {
    return api.send(api.change(study + "/file?name=s.csv", "text/csv", csv));
  }
}
