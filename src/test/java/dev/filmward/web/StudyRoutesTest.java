package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A gauge study over HTTP: planned, entered, finished. */
class StudyRoutesTest {
  private static final String STUDIES = "/api/v1/gauge-studies";
  private static final String PLAN =
      """
      {"gauge": "Gauge 3", "structure": "DUO-50", "purpose": "new probe", "trials": 2, "seed": 5,
       "parts": ["1", "2"], "operators": ["Ann", "Bo"]}
      """;

  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(folder);
    api = served.api();
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void aStudyGoesFromItsPlanToItsVerdict() {
    Answer planned = api.post(STUDIES, PLAN);
    assertThat(planned.status()).as(planned.text()).isEqualTo(200);
    assertThat(planned.json().get("readings").asInt()).isEqualTo(16);
    assertThat(planned.json().at("/layers/0/lower").asDouble()).isEqualTo(17);
    String study = STUDIES + "/" + planned.json().get("id").asLong();
    assertThat(api.get(study).json().get("steps")).hasSize(8);

    Answer one =
        api.post(
            study + "/readings",
            """
            {"readings": [{"part": "1", "operator": "Ann", "trial": 1, "layer": "Skin", "um": 20}]}
            """);
    assertThat(one.json().get("new").asInt()).as(one.text()).isEqualTo(1);
    Answer refused = api.post(study + "/finish", "{\"conclusion\": \"good\"}");
    assertThat(refused.status()).isEqualTo(409);
    assertThat(refused.text()).contains("15 readings of 16");

    Answer rest = api.send(api.change(study + "/file?name=s.csv", "text/csv", csv()));
    assertThat(rest.json().get("new").asInt()).as(rest.text()).isEqualTo(15);
    JsonNode whole = api.get(study).json();
    assertThat(whole.get("studies").findValuesAsText("layer"))
        .containsExactly("Skin", "Seal", "total");
    assertThat(whole.at("/studies/0/verdict/verdict").asText()).isEqualTo("acceptable");
    assertThat(whole.at("/studies/0/verdict/source").asText()).contains("Measurement Systems");

    assertThat(
            api.post(study + "/finish", "{\"conclusion\": \"good\"}").json().get("state").asText())
        .isEqualTo("finished");
    JsonNode listed = api.get(STUDIES).json().get("studies").get(0);
    assertThat(listed.at("/ended/words").asText()).isEqualTo("good");
    assertThat(listed.get("entered").asInt()).isEqualTo(16);
  }

  /** Spots 3 um apart, operators 0.02 um, repeats 0.02 um. */
  private static String csv() {
    StringBuilder csv = new StringBuilder("part,operator,trial,layer,thickness_um\n");
    for (String layer : new String[] {"Skin", "Seal"}) {
      double level = layer.equals("Skin") ? 20 : 30;
      for (int part = 1; part <= 2; part++) {
        for (String operator : new String[] {"Ann", "Bo"}) {
          for (int trial = 1; trial <= 2; trial++) {
            double um =
                level + 3 * (part - 1) + (operator.equals("Bo") ? 0.02 : 0) + 0.02 * (trial - 1);
            csv.append(part + "," + operator + "," + trial + "," + layer + "," + um + "\n");
          }
        }
      }
    }
    return csv.toString();
  }

  @Test
  void whatIsNoPlanOrNoReadingIsRefusedWithWhatIsWrong() {
    assertThat(api.post(STUDIES, PLAN.replace("[\"1\", \"2\"]", "[\"1\", \"1\"]")).text())
        .contains("stands twice");
    assertThat(api.post(STUDIES, PLAN.replace("\"trials\": 2", "\"trials\": 1")).text())
        .contains("2 to 20");
    assertThat(api.post(STUDIES, PLAN.replace("DUO-50", "TRIO")).status()).isEqualTo(404);
    long id = api.post(STUDIES, PLAN).json().get("id").asLong();
    Answer bad =
        api.send(api.change(STUDIES + "/" + id + "/file?name=s.csv", "text/csv", "a,b\n1,2\n"));
    assertThat(bad.status()).isEqualTo(422);
    assertThat(bad.text()).contains("part,operator,trial");
    Answer abandoned = api.post(STUDIES + "/" + id + "/abandon", "{\"reason\": \"probe broke\"}");
    assertThat(abandoned.json().get("state").asText()).isEqualTo("abandoned");
    assertThat(api.get(STUDIES + "/999").status()).isEqualTo(404);
  }
}
