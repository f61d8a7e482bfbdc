package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the Intake page asks of rows in quarantine and of corrections. */
class MendingRoutesTest {
  private static final String ROW = "2026-11-20T11:00:00Z,Blown 1,DUO-50,R9,S1,1,";

  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(folder);
    api = served.api();
    api.upload("a.csv", SmallFilm.HEADER + ROW + "thick,30\n");
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void theQuarantineTellsIdsHeadingsAndCells() {
    JsonNode held = api.get("/api/v1/files/1/quarantine").json();
    assertThat(held.get("headings")).hasSize(8);
    assertThat(held.get("headings").get(6).asText()).isEqualTo("layer_1_um");
    assertThat(held.get("separator").asText()).isEqualTo(",");
    assertThat(held.get("obstacle").asText()).isEmpty();
    JsonNode row = held.get("rows").get(0);
    assertThat(row.get("state").asText()).isEqualTo("open");
    assertThat(row.get("cells")).hasSize(8);
    assertThat(row.get("cells").get(6).asText()).isEqualTo("thick");
  }

  @Test
  void aMendedRowIsChartedAndMendingItAgainIsRefused() {
    Answer answer = mend(ROW + "20.4,30");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.json().get("mended").asInt()).isEqualTo(1);
    assertThat(answer.json().get("file").get("by").asText()).isEqualTo("Kim");
    assertThat(answer.json().get("file").get("source").asText()).isEqualTo("mended");
    assertThat(api.series(1).get("columns").get("mean").get(0).asDouble()).isEqualTo(20.4);

    JsonNode row = api.get("/api/v1/files/1/quarantine").json().get("rows").get(0);
    assertThat(row.get("state").asText()).isEqualTo("mended");
    assertThat(row.get("raw").asText()).isEqualTo(ROW + "thick,30");
    assertThat(row.get("mended").get("file").asInt()).isEqualTo(2);
    assertThat(api.get("/api/v1/files").json().get("files").get(1).get("mended").asInt())
        .isEqualTo(1);

    Answer again = mend(ROW + "20.5,30");
    assertThat(again.status()).isEqualTo(409);
    assertThat(again.json().get("error").get("what").asText()).contains("mended already, by Kim");
  }

  @Test
  void aRowRefusedAgainStaysOpenAndSaysWhy() {
    JsonNode answer = mend(ROW + "0,30").json();
    assertThat(answer.get("mended").asInt()).isZero();
    assertThat(answer.get("file").isNull()).isTrue();
    assertThat(answer.get("still").get(0).get("line").asInt()).isEqualTo(2);
    assertThat(answer.get("still").get(0).get("reason").asText()).contains("layer_1_um");
  }

  @Test
  void whatCannotBeMeantIsRefusedInWords() {
    assertThat(api.post("/api/v1/files/1/quarantine/mend", "{}").status()).isEqualTo(400);
    assertThat(mend("").status()).isEqualTo(400);
    String other = "{\"rows\": [{\"row\": 77, \"text\": \"x\"}]}";
    assertThat(api.post("/api/v1/files/1/quarantine/mend", other).status()).isEqualTo(404);
    assertThat(api.get("/api/v1/files/77/corrections").status()).isEqualTo(404);
  }

  @Test
  void aCorrectionIsToldByFileAndBySampleWithWhoAndWhy() {
    api.upload("b.csv", SmallFilm.HEADER + ROW + "20,30\n");
    api.send(
        api.change(
            "/api/v1/files?name=c.csv&why=wrong%20velocity",
            "text/csv", SmallFilm.HEADER + ROW + "20.4,30\n"));
    JsonNode ofFile = api.get("/api/v1/files/3/corrections").json();
    assertThat(ofFile.get("more").asBoolean()).isFalse();
    JsonNode one = ofFile.get("corrections").get(0);
    assertThat(one.get("oldUm").asDouble()).isEqualTo(20);
    assertThat(one.get("newUm").asDouble()).isEqualTo(20.4);
    assertThat(one.get("layerName").asText()).isEqualTo("Skin");
    assertThat(one.get("by").asText()).isEqualTo("Kim");
    assertThat(one.get("why").asText()).isEqualTo("wrong velocity");
    String made = "/api/v1/corrections?line=Blown%201&structure=DUO-50";
    assertThat(api.get(made).json()).isEqualTo(ofFile);
    assertThat(api.get(made + "&roll=R9&sample=S1").json()).isEqualTo(ofFile);
    assertThat(api.get(made + "&roll=R9&sample=S2").json().get("corrections")).isEmpty();
  }

  private Answer mend(String text) {
    return api.post(
        "/api/v1/files/1/quarantine/mend",
        "{\"rows\": [{\"row\": 1, \"text\": \"" + text + "\"}]}");
  }
}
