package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.store.TestDatabase;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Structures and their versions over HTTP. It is 13:00 in the plant on 20 November 2026. */
@ParameterizedClass
@EnumSource(TestDatabase.class)
class StructureRoutesTest {
  private static final String STRUCTURES = "/api/v1/structures";
  private static final String WIDER =
      SmallFilm.STRUCTURES.replace("lower: 17 um\n        upper: 23 um", "upper: 23.5 um");

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

  private Answer send(String path, String yaml) {
    return api.send(api.change(STRUCTURES + path, "application/yaml", yaml));
  }

  private JsonNode film() {
    return api.get(STRUCTURES).json().get("structures").get(0);
  }

  @Test
  void aPreviewSaysWhatChangesAndKeepsNothing() {
    Answer answer = send("/preview?name=a.yaml", WIDER);
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
    JsonNode entry = answer.json().get("structures").get(0);
    assertThat(entry.get("state").asText()).isEqualTo("changed");
    JsonNode changes = entry.get("changes");
    assertThat(changes.findValuesAsText("what")).containsExactly("lower", "upper");
    assertThat(changes.get(0).get("was").asDouble()).isEqualTo(17);
    assertThat(changes.get(0).get("is").isNull()).isTrue();
    assertThat(changes.get(1).get("is").asDouble()).isEqualTo(23.5);
    assertThat(film().get("version").asInt()).isEqualTo(1);
    assertThat(send("/preview?name=b.yaml", answer.json().get("yaml").asText()).json())
        .isEqualTo(answer.json());
  }

  @Test
  void jsonIsAStructuresFileToo() {
    String json =
        """
        {"structures": [{"code": "UNO-20", "layers": [{"name": "Only: \\"one\\"", "role": "core", "target": "20 um"}]}]}
        """;
    JsonNode preview = send("/preview?name=a.yaml", json).json();
    assertThat(preview.get("structures").get(0).get("state").asText()).isEqualTo("new");
    assertThat(preview.get("yaml").asText()).contains("- name: \"Only: \\\"one\\\"\"\n");
  }

  @Test
  void aVersionIsKeptAndTakenBack() {
    Answer kept = send("?name=a.yaml&why=wider&seen=1", WIDER);
    assertThat(kept.status()).as(kept.text()).isEqualTo(200);
    JsonNode version = film().get("versions").get(0);
    assertThat(version.get("by").asText()).isEqualTo("Kim");
    assertThat(version.get("reason").asText()).isEqualTo("wider");
    assertThat(version.get("standing").asText()).isEqualTo("in-force");
    assertThat(version.get("at").asText()).isEqualTo("2026-11-20T13:00:00+01:00");
    assertThat(film().get("takeBack").asInt()).isEqualTo(2);

    String back = "{\"code\": \"DUO-50\", \"version\": 2, \"reason\": \"wrong film\"}";
    Answer taken = api.post(STRUCTURES + "/take-back", back);
    assertThat(taken.status()).as(taken.text()).isEqualTo(200);
    assertThat(film().get("version").asInt()).isEqualTo(3);
    assertThat(film().get("versions").get(0).get("takesBack").asInt()).isEqualTo(2);
    assertThat(api.post(STRUCTURES + "/take-back", back).status()).isEqualTo(409);
    assertThat(api.post(STRUCTURES + "/take-back", back.replace("DUO-50", "NO")).status())
        .isEqualTo(404);
  }

  @Test
  void aVersionMayBePlanned() {
    assertThat(send("?name=a.yaml&holdsFrom=2026-11-21T06:00:00%2B01:00", WIDER).status())
        .isEqualTo(200);
    assertThat(film().get("version").asInt()).isEqualTo(1);
    JsonNode planned = film().get("versions").get(0);
    assertThat(planned.get("standing").asText()).isEqualTo("planned");
    assertThat(planned.get("holdsFrom").asText()).isEqualTo("2026-11-21T06:00:00+01:00");
    assertThat(send("?name=a.yaml&holdsFrom=2026-11-20T06:00:00%2B01:00", WIDER).status())
        .isEqualTo(400);
    assertThat(send("?name=a.yaml&holdsFrom=tomorrow", WIDER).text()).contains("2026-11-25");
  }

  @Test
  void whatIsWrongIsSaidWithItsPlace() {
    Answer answer = send("/preview?name=a.yaml", WIDER.replace("role: seal", "role: sealed"));
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.json().get("error").get("what").asText())
        .contains("line 13")
        .contains("layer 2 (Seal), role")
        .contains("skin, core, tie, barrier, seal");
    assertThat(send("?name=a.yaml&seen=0", WIDER).status()).isEqualTo(409);
  }

  @Test
  void layersThatReadingsDoNotHaveAreRefused() {
    api.upload("a.csv", ServedPlant.FILM.usual(0, 2));
    Answer answer = send("?name=a.yaml", SmallFilm.STRUCTURES + "    reported: [[Skin, Seal]]\n");
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.text()).contains("2 samples of DUO-50");
    assertThat(film().get("samples").asLong()).isEqualTo(2);
  }
}
