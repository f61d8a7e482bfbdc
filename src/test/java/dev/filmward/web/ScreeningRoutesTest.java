package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.film.SampleKey;
import dev.filmward.people.Role;
import dev.filmward.store.TestDatabase;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * A sample that was exported in thousandths of an inch under a heading of micrometres looks misread
 * and stays off the charts, until somebody says otherwise.
 */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class ScreeningRoutesTest {
  private static final String SCREENING = "/api/v1/screening";
  private static final int SLIPPED = 25;

  /** Samples of two layers in five lanes. */
  private static final int READINGS = 10;

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(database, folder).withFrozenLimits();
    api = served.api();
    api.upload("slipped.csv", slipped());
    api.upload("after.csv", ServedPlant.FILM.usual(SLIPPED + 1, SLIPPED + 3));
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void aMisreadSampleIsListedWithItsEvidenceAndWhatItReadsAndRaisesNothing() {
    JsonNode found = only(list("open"));
    assertThat(found.get("sample").asText()).isEqualTo(SmallFilm.sample(SLIPPED));
    assertThat(found.get("state").asText()).isEqualTo("held-out");
    assertThat(found.at("/flags/0/kind").asText()).isEqualTo("unit-slip");
    assertThat(found.at("/flags/0/evidence").asText()).contains("25.4");
    assertThat(found.get("lanes")).hasSize(5);
    assertThat(found.at("/layers/0/name").asText()).isEqualTo("Skin");
    assertThat(found.at("/layers/0/usual").asDouble()).isCloseTo(SmallFilm.SKIN_UM, within(0.1));
    assertThat(found.at("/layers/0/read/2").asDouble()).isCloseTo(19.9 / 25.4, within(1e-3));
    assertThat(found.get("decisions")).isEmpty();
    assertThat(charted()).doesNotContain(SmallFilm.sample(SLIPPED)).hasSize(SLIPPED + 2);
    assertThat(api.get("/api/v1/alarms").json().get("alarms")).isEmpty();
  }

  @Test
  void aListIsNarrowedByKindStateLineAndStructure() {
    assertThat(list("all")).hasSize(1);
    assertThat(list("held-out")).hasSize(1);
    assertThat(list("confirmed")).isEmpty();
    assertThat(list("all&kind=unit-slip&line=Blown%201&structure=DUO-50")).hasSize(1);
    assertThat(list("all&kind=couplant")).isEmpty();
    assertThat(list("all&line=Blown%202")).isEmpty();
    assertThat(list("all&structure=OTHER")).isEmpty();
    assertThat(api.get(SCREENING + "?state=odd").status()).isEqualTo(400);
    assertThat(api.get(SCREENING + "?kind=odd").text()).contains("is no kind of misreading");
  }

  @Test
  void whatIsPutBackIsChartedAndCanRaiseAnAlarm() {
    long id = only(list("open")).get("id").asLong();
    Answer answer = decide(api, id, "put-back", "the film really was so thin");
    assertThat(answer.json().get("state").asText()).isEqualTo("put-back");
    assertThat(answer.json().at("/decisions/0/reason").asText())
        .isEqualTo("the film really was so thin");
    assertThat(answer.json().at("/decisions/0/by").asText()).isEqualTo("Kim");
    assertThat(charted()).contains(SmallFilm.sample(SLIPPED)).hasSize(SLIPPED + 3);
    assertThat(api.get("/api/v1/alarms").json().get("alarms")).isNotEmpty();
    assertThat(list("open")).isEmpty();
    assertThat(decide(api, id, "put-back", "again").status()).isEqualTo(409);
    assertThat(decide(api, id, "confirm", "no, it was the unit").status()).isEqualTo(200);
    assertThat(charted()).doesNotContain(SmallFilm.sample(SLIPPED));
    assertThat(only(list("confirmed")).get("decisions")).hasSize(2);
  }

  @Test
  void aSampleThatNoRuleFoundIsLeftOutByAPersonWithAReason() {
    SampleKey usual =
        new SampleKey(SmallFilm.LINE, SmallFilm.CODE, "R1", SmallFilm.sample(SLIPPED + 1));
    long id =
        served.plant().store().read(tables -> tables.samples().find(usual).orElseThrow().id());
    assertThat(decide(api, id, "leave-out", "").status()).as("without a reason").isEqualTo(400);
    Answer answer = decide(api, id, "leave-out", "measured on the bench by mistake");
    assertThat(answer.json().get("state").asText()).isEqualTo("left-out");
    assertThat(answer.json().get("flags")).isEmpty();
    assertThat(charted()).doesNotContain(usual.sample()).hasSize(SLIPPED + 1);
    assertThat(decide(api, 999_999, "leave-out", "no such one").status()).isEqualTo(404);
  }

  /** Who takes alarms may say that it was misread; to chart it again is an engineer's. */
  @Test
  void eachDecisionNeedsItsRight() {
    long id = only(list("open")).get("id").asLong();
    Api lead = served.as("Lee", Role.SHIFT_LEAD);
    Api viewer = served.as("Robin", Role.VIEWER);
    assertThat(decide(viewer, id, "confirm", "seen").status()).isEqualTo(403);
    assertThat(decide(lead, id, "put-back", "seen").status()).isEqualTo(403);
    assertThat(decide(lead, id, "leave-out", "seen").status()).isEqualTo(403);
    assertThat(decide(lead, id, "confirm", "seen").status()).isEqualTo(200);
    assertThat(viewer.get(SCREENING + "?state=all").status()).isEqualTo(200);
  }

  @Test
  void screeningIsSetFromTheNextSampleOnAndWhatWasFoundStays() {
    String address = "/api/v1/lines/Blown%201/screening?structure=DUO-50";
    assertThat(treatment(api.get(address).json(), "unit-slip")).isEqualTo("hold-out");
    assertThat(api.get(address).json().get("version").asInt()).isZero();
    String order =
        "{\"line\": \"Blown 1\", \"structure\": \"DUO-50\", \"gaugeMhz\": 80,"
            + " \"kinds\": [{\"kind\": \"unit-slip\", \"treatment\": \"%s\"}], \"reason\": \"%s\"}";
    Answer set =
        api.post(SCREENING + "/settings", order.formatted("off", "the gauge writes mil now"));
    assertThat(set.status()).as(set.text()).isEqualTo(200);
    assertThat(set.json().get("version").asInt()).isEqualTo(1);
    JsonNode now = api.get(address).json();
    assertThat(treatment(now, "unit-slip")).isEqualTo("off");
    assertThat(now.get("gaugeMhz").asDouble()).isEqualTo(80);
    assertThat(now.at("/versions/0/by").asText()).isEqualTo("Kim");
    assertThat(now.at("/versions/0/reason").asText()).isEqualTo("the gauge writes mil now");
    assertThat(list("held-out")).as("what was found before").hasSize(1);
    assertThat(api.post(SCREENING + "/settings", order.formatted("ignore", "x")).text())
        .contains("is not hold-out, mark or off");
    assertThat(api.post(SCREENING + "/settings", order.formatted("mark", "")).status())
        .isEqualTo(400);
  }

  @Test
  void whatWasNotMeasuredIsCountedByDayAndLane() {
    api.upload("blank.csv", ServedPlant.FILM.withoutSkin(SLIPPED + 3));
    JsonNode shares =
        api.get("/api/v1/lines/Blown%201/missing?structure=DUO-50").json().get("shares");
    assertThat(shares).hasSize(5);
    for (JsonNode lane : shares) {
      assertThat(lane.get("day").asText()).isEqualTo("2026-11-20");
      assertThat(lane.get("places").asInt()).isEqualTo(2 * (SLIPPED + 4));
      assertThat(lane.get("missing").asInt()).isEqualTo(1);
    }
    assertThat(api.get("/api/v1/lines/Blown%201/missing?structure=OTHER").status()).isEqualTo(404);
  }

  private static String treatment(JsonNode rules, String kind) {
    for (JsonNode each : rules.get("kinds")) {
      if (each.get("kind").asText().equals(kind)) {
        return each.get("treatment").asText();
      }
    }
    throw new AssertionError("no kind " + kind + " in " + rules);
  }

  private static Answer decide(Api who, long id, String deed, String reason) {
    return who.post(SCREENING + "/" + id + "/" + deed, "{\"reason\": \"" + reason + "\"}");
  }

  private JsonNode list(String state) {
    return api.get(SCREENING + "?state=" + state).json().get("samples");
  }

  private static JsonNode only(JsonNode samples) {
    assertThat(samples).hasSize(1);
    return samples.get(0);
  }

  /** Names of the samples whose skin is charted. */
  private List<String> charted() {
    List<String> names = new ArrayList<>();
    JsonNode series = api.series(1).get("columns");
    JsonNode samples = series.get("sample");
    for (int i = 0; i < samples.size(); i++) {
      if (!series.get("mean").get(i).isNull()) {
        names.add(samples.get(i).asText());
      }
    }
    return names;
  }

  /** The next sample, a 25.4th of what it is. */
  private static String slipped() {
    String[] rows = ServedPlant.FILM.usual(SLIPPED, SLIPPED + 1).split("\n", -1);
    StringBuilder csv = new StringBuilder(rows[0]).append('\n');
    int readings = 0;
    for (int row = 1; row < rows.length - 1; row++) {
      String[] cells = rows[row].split(",", -1);
      for (int cell = cells.length - 2; cell < cells.length; cell++) {
        cells[cell] = String.format(Locale.ROOT, "%.4f", Double.parseDouble(cells[cell]) / 25.4);
        readings++;
      }
      csv.append(String.join(",", cells)).append('\n');
    }
    assertThat(readings).isEqualTo(READINGS);
    return csv.toString();
  }
}
