package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.web.Api.Answer;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file with headings of its own is asked about, a mapping kept, and the file read through it. */
class MappingRoutesTest {
  private static final String ODD =
      "Anlage: Blown 1\nZeit;Rezept;Rolle;Probe;Spur;Schicht;Dicke\n"
          + "03/04/2026 09:30;Film;R7;S1;1;1;12,5\n";

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

  private Answer propose(String answers, String csv) {
    String query =
        "/api/v1/mappings/proposal?name=odd.csv&answers="
            + URLEncoder.encode(answers, StandardCharsets.UTF_8);
    return api.send(api.change(query, "text/csv", csv));
  }

  @Test
  void whatIsOpenIsAskedThenTheMappingIsKeptAndTheFileIsRead() {
    JsonNode first = propose("{}", ODD).json();
    assertThat(first.path("needs").asText()).isEqualTo("answers");
    assertThat(first.path("questions").findValuesAsText("key")).contains("unit", "pattern");
    assertThat(first.path("rows").path(0).path(6).asText()).isEqualTo("12,5");

    String code = served.plant().structures().all().iterator().next().code();
    String answers =
        "{\"unit\":\"um\",\"pattern\":\"d/M/yyyy H:mm\",\"value:structure:Film\":\"" + code + "\"}";
    JsonNode second = propose(answers, ODD).json();
    assertThat(second.path("needs").asText()).as(second.toString()).isEqualTo("mapping");
    JsonNode reading = second.path("read").path(0).path("readings").path(0);
    assertThat(reading.path("um").asDouble()).isEqualTo(12.5);
    assertThat(reading.path("line").asText()).isEqualTo("Blown 1");

    Answer kept =
        api.send(api.change("/api/v1/mappings", "text/yaml", second.path("yaml").asText()));
    assertThat(kept.status()).isEqualTo(200);
    assertThat(api.get("/api/v1/mappings").json().path("mappings")).hasSize(1);
    assertThat(propose("{}", ODD).json().path("needs").asText()).isEqualTo("nothing");
    assertThat(api.upload("odd.csv", ODD).json().path("new").asInt()).isEqualTo(1);
  }

  @Test
  void whatIsNoTableIsRefusedInWords() {
    Answer answer = propose("{}", "nothing to see\nhere\n");
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.text()).contains("no line looks like a header");
  }

  @Test
  void aMappingWithFaultsIsNotKept() {
    Answer answer = api.send(api.change("/api/v1/mappings", "text/yaml", "mapping: x\n"));
    assertThat(answer.status()).isEqualTo(400);
    assertThat(api.get("/api/v1/mappings").json().path("mappings")).isEmpty();
  }
}
