package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import dev.filmward.pipeline.Plant;
import dev.filmward.report.ReportWeek;
import dev.filmward.store.Store;
import dev.filmward.web.Api;
import dev.filmward.web.DoorOptions;
import dev.filmward.web.SmallFilm;
import dev.filmward.web.WebServer;
import dev.filmward.web.WebServer.Options;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Answers of the demo plant are what the description of the interface says, and nothing more: for
 * this, an object of the description has the properties it names and no others.
 */
class OpenApiAnswersTest {
  private static final String SMALL = "line=Blown%201&structure=DUO-50";
  private static final String THIS_WEEK =
      ReportWeek.of(Instant.now(), ZoneId.of("Europe/Berlin")).word();
  private static final String FROM_UNKNOWN = "?" + SMALL;

  /** An address of each route that is asked for; a new route needs one here. */
  private static final Map<String, List<String>> ADDRESSES =
      Map.ofEntries(
          Map.entry("/api/v1/board", List.of("/api/v1/board")),
          Map.entry(
              "/api/v1/series",
              List.of(
                  "/api/v1/series?line=Blown%201&structure=LID-60&kind=total",
                  "/api/v1/series" + FROM_UNKNOWN + "&kind=layer&position=1&pixels=100")),
          Map.entry(
              "/api/v1/series/comparison",
              List.of(
                  "/api/v1/series/comparison?line=Blown%201&structure=LID-60&kind=total&otherLine=Blown%202",
                  "/api/v1/series/comparison" + FROM_UNKNOWN + "&kind=layer&position=1&otherTo=5")),
          Map.entry(
              "/api/v1/series/look",
              List.of(
                  "/api/v1/series/look?line=Blown%201&structure=LID-60&kind=total",
                  "/api/v1/series/look" + FROM_UNKNOWN + "&kind=layer&position=1&pixels=100")),
          Map.entry("/api/v1/alarms", List.of("/api/v1/alarms", "/api/v1/alarms?state=all")),
          Map.entry("/api/v1/alarms/{id}", List.of("/api/v1/alarms/1")),
          Map.entry("/api/v1/work/{id}", List.of("/api/v1/work/nobody-waits-for-it")),
          Map.entry("/api/v1/holds", List.of("/api/v1/holds")),
          Map.entry("/api/v1/lines/{line}/events", List.of("/api/v1/lines/Blown%201/events")),
          Map.entry("/api/v1/lines/{line}/modes", List.of("/api/v1/lines/Blown%202/modes")),
          Map.entry("/api/v1/alarms/search", List.of("/api/v1/alarms/search?words=worn%20screen")),
          Map.entry("/api/v1/alarms/{id}/rolls", List.of("/api/v1/alarms/1/rolls")),
          Map.entry("/api/v1/alarms/{id}/diagnosis", List.of("/api/v1/alarms/1/diagnosis")),
          Map.entry("/api/v1/diagnosis/hit-rate", List.of("/api/v1/diagnosis/hit-rate")),
          Map.entry("/api/v1/lines/{line}/log", List.of("/api/v1/lines/Blown%201/log")),
          Map.entry("/api/v1/signatures", List.of("/api/v1/signatures")),
          Map.entry("/api/v1/rolls", List.of("/api/v1/rolls", "/api/v1/rolls?state=all")),
          Map.entry("/api/v1/causes", List.of("/api/v1/causes")),
          Map.entry("/api/v1/checks", List.of("/api/v1/checks")),
          Map.entry("/api/v1/screening", List.of("/api/v1/screening?state=all")),
          Map.entry(
              "/api/v1/lines/{line}/screening",
              List.of("/api/v1/lines/Blown%201/screening?structure=LID-60")),
          Map.entry(
              "/api/v1/lines/{line}/missing",
              List.of("/api/v1/lines/Blown%201/missing?structure=LID-60")),
          Map.entry("/api/v1/gauges", List.of("/api/v1/gauges")),
          Map.entry("/api/v1/calibrations", List.of("/api/v1/calibrations")),
          Map.entry("/api/v1/check-standards", List.of("/api/v1/check-standards")),
          Map.entry("/api/v1/shifts", List.of("/api/v1/shifts")),
          Map.entry("/api/v1/structures", List.of("/api/v1/structures")),
          Map.entry(
              "/api/v1/handover", List.of("/api/v1/handover", "/api/v1/handover?line=Blown%201")),
          Map.entry("/api/v1/handover/notes", List.of("/api/v1/handover/notes")),
          Map.entry("/api/v1/alarm-figures", List.of("/api/v1/alarm-figures")),
          Map.entry("/api/v1/alarm-figures/spared", List.of("/api/v1/alarm-figures/spared")),
          Map.entry("/api/v1/gauge-studies", List.of("/api/v1/gauge-studies")),
          Map.entry(
              "/api/v1/gauge-studies/{id}",
              List.of("/api/v1/gauge-studies/1", "/api/v1/gauge-studies/2")),
          Map.entry("/api/v1/telling/rules", List.of("/api/v1/telling/rules")),
          Map.entry("/api/v1/telling/settings", List.of("/api/v1/telling/settings")),
          Map.entry("/api/v1/telling/outbox", List.of("/api/v1/telling/outbox")),
          Map.entry("/api/v1/me", List.of("/api/v1/me")),
          Map.entry("/api/v1/colleagues", List.of("/api/v1/colleagues")),
          Map.entry("/api/v1/people", List.of("/api/v1/people")),
          Map.entry("/api/v1/tokens", List.of("/api/v1/tokens")),
          Map.entry(
              "/api/v1/lines/{line}/limits",
              List.of("/api/v1/lines/Blown%201/limits?structure=LID-60")),
          Map.entry(
              "/api/v1/lines/{line}/tests",
              List.of("/api/v1/lines/Blown%201/tests?structure=LID-60")),
          Map.entry("/api/v1/files", List.of("/api/v1/files")),
          Map.entry("/api/v1/files/{id}/quarantine", List.of("/api/v1/files/{faulty}/quarantine")),
          Map.entry(
              "/api/v1/files/{id}/corrections", List.of("/api/v1/files/{corrected}/corrections")),
          Map.entry("/api/v1/corrections", List.of("/api/v1/corrections" + FROM_UNKNOWN)),
          Map.entry("/api/v1/mappings", List.of("/api/v1/mappings")),
          Map.entry(
              "/api/v1/gauge/check",
              List.of(
                  "/api/v1/gauge/check?frequency=100&structure=LID-60",
                  "/api/v1/gauge/check?frequency=20&coupling=contact&structure=HBF-80")),
          Map.entry(
              "/api/v1/gauge/uncertainty",
              List.of(
                  "/api/v1/gauge/uncertainty?structure=LID-60&line=Blown%201",
                  "/api/v1/gauge/uncertainty?structure=HBF-80&coverage=student&rule=simple")),
          Map.entry("/api/v1/reports", List.of("/api/v1/reports")),
          Map.entry(
              "/api/v1/reports/week",
              List.of(
                  "/api/v1/reports/week",
                  "/api/v1/reports/week?week=" + THIS_WEEK + "&edition=customer")),
          Map.entry(
              "/api/v1/reports/file", List.of("/api/v1/reports/file?form=json&week=" + THIS_WEEK)),
          Map.entry(
              "/api/v1/reports/comparison",
              List.of(
                  "/api/v1/reports/comparison?line=Blown%201&structure=LID-60&week="
                      + THIS_WEEK
                      + "&otherWeek="
                      + THIS_WEEK
                      + "&otherLine=Blown%202&otherStructure=SHR-60")),
          Map.entry("/health", List.of("/health")),
          Map.entry("/api/v1/openapi.json", List.of("/api/v1/openapi.json")),
          Map.entry("/api/v1/audit", List.of("/api/v1/audit")));

  private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

  @TempDir private static Path folder;
  private static Plant plant;
  private static WebServer server;
  private static Api api;
  private static JsonNode document;
  private static long faulty;
  private static long corrected;

  @BeforeAll
  static void serveTheDemo() throws Exception {
    plant = new Plant(Store.open(folder), Clock.systemUTC(), ZONE);
    String host = "127.0.0.1";
    DoorOptions doors = new DemoPeople(plant).doors(host);
    server = WebServer.start(plant, new Options(host, 0, Options.Purpose.DEMONSTRATION, doors));
    api = new Api(server.port());
    ok(api.post("/api/v1/session/guest", "{\"name\": \"Jo\"}"));
    new Demo(plant, Duration.ofSeconds(15)).load();
    moreThanTheDemoHas();
    peopleCareForAnAlarm();
    aShiftIsHandedOver();
    somebodyIsToldAndAMachineMayLook();
    document = api.get("/api/v1/openapi.json").json();
  }

  @AfterAll
  static void stop() {
    server.close();
    plant.close();
  }

  /** A quarantine, corrections, holds, and what a line is doing. */
  private static void moreThanTheDemoHas() {
    SmallFilm film = SmallFilm.withSampleAt(9, Instant.now().minusSeconds(3600));
    ok(api.send(api.change("/api/v1/structures?name=s.yaml", "text/plain", SmallFilm.STRUCTURES)));
    ok(api.upload("usual.csv", film.usual(0, 9)));
    faulty = id(api.upload("faulty.csv", film.usual(0, 1).replace("20.300", "thick")));
    JsonNode row = api.get("/api/v1/files/" + faulty + "/quarantine").json().get("rows").get(0);
    api.upload("again.csv", film.usual(9, 10).replace("20.100", "thin"));
    corrected = id(api.upload("other.csv", film.thinnerSkin(0, 1, 0.5)));
    ok(
        api.post(
            "/api/v1/files/" + faulty + "/quarantine/mend",
            "{\"rows\": [{\"row\": "
                + row.get("id")
                + ", \"text\": \""
                + row.get("raw").asText().replace("thick", "20.300")
                + "\"}]}"));
    ok(api.post("/api/v1/lines/Blown%201/log", "{\"kind\": \"resin-lot\", \"words\": \"lot 7\"}"));
    ok(api.post("/api/v1/out-of-service", "{\"line\": \"Blown 2\", \"reason\": \"no gauge\"}"));
    ok(
        api.post(
            "/api/v1/lines/Blown%202/mode", "{\"mode\": \"down\", \"reason\": \"screen pack\"}"));
  }

  private static void peopleCareForAnAlarm() {
    String alarm = "/api/v1/alarms/1";
    JsonNode open = api.get(alarm).json();
    if (open.get("acknowledged").isNull()) {
      done(alarm + "/acknowledge", "{}");
    }
    String owner = api.get(alarm).json().get("owner").get("name").asText();
    done(alarm + "/owner", "{'to': 'Alex', 'from': '" + owner + "', 'why': 'end of shift'}");
    done(alarm + "/comments", "{'words': 'a worn screen'}");
    String check = open.get("checks").get(0).get("words").asText();
    done(alarm + "/checks", "{'check': '" + check + "', 'outcome': 'not-found'}");
    JsonNode cause = api.get("/api/v1/causes").json().get("causes").get(0);
    done(alarm + "/finding", "{'cause': '" + cause.get("code").asText() + "', 'note': 'again'}");
    ObjectNode plan = (ObjectNode) api.get("/api/v1/checks").json();
    ObjectNode asked = plan.put("reason", "screens wear").putArray("causes").addObject();
    asked.set("code", cause.get("code"));
    asked.putArray("checks").add("pressure before the screen");
    ok(api.post("/api/v1/checks", plan.toString()));
    String roll = "'line': 'Blown 1', 'structure': 'DUO-50', 'roll': 'R1', 'version': 0";
    done("/api/v1/rolls/hold", "{'rolls': [{" + roll + "}], 'reason': 'thin', 'alarm': 1}");
  }

  private static void aShiftIsHandedOver() {
    done("/api/v1/handover/notes", "{'text': 'die wiped', 'line': 'Blown 1'}");
    String todo = "{'text': 'order screens', 'kind': 'follow-up'}";
    long note = id(api.post("/api/v1/handover/notes", todo.replace('\'', '"')));
    done("/api/v1/handover/notes/" + note + "/settle", "{'outcome': 'ordered'}");
    JsonNode shown = api.get("/api/v1/handover").json();
    String shift = shown.at("/handover/shift/shift").asText();
    String digest = shown.get("digest").asText();
    done(
        "/api/v1/handover/sign",
        "{'shift': '" + shift + "', 'side': 'outgoing', 'digest': '" + digest + "'}");
    String calendar =
        "{'linesPerOperator': 2, 'holdsFrom': '"
            + LocalDate.now(ZONE).plusDays(9)
            + "', 'reason': 'two crews', 'shifts':"
            + " [{'name': 'Day', 'startsAt': '06:00', 'days': [1, 2, 3, 4, 5, 6, 7],"
            + " 'crews': ['A', 'B']}]}";
    done("/api/v1/shifts", calendar);
  }

  private static void somebodyIsToldAndAMachineMayLook() {
    String way = "'channel': 'webhook', 'address': 'http://127.0.0.1:9/', 'reason': 'trial'";
    done(
        "/api/v1/telling/rules",
        "{'name': 'Alex', 'role': 'engineer', 'priority': 'low', 'events': ['opened'],"
            + " 'lines': ['Blown 1'], 'quiet': {'from': '22:00', 'to': '05:00'}, "
            + way
            + "}");
    String mail =
        "{'host': 'mail.example', 'port': 587, 'security': 'starttls', 'from': 'a@b.example'}";
    done(
        "/api/v1/telling/settings",
        "{'mail': " + mail + ", 'escalation': {'highMinutes': 15}, 'reason': 'trial'}");
    String told =
        "{'name': 'Gauge 1', 'scope': ['read'], 'lastDay': '"
            + LocalDate.now(ZONE).plusDays(9)
            + "'}";
    done("/api/v1/tokens", told);
  }

  /** Posts JSON, written with single quotation marks, where it is done. */
  private static void done(String path, String json) {
    ok(api.post(path, json.replace('\'', '"')));
  }

  private static void ok(Api.Answer answer) {
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
  }

  private static long id(Api.Answer answer) {
    ok(answer);
    return answer.json().get("id").asLong();
  }

  @Test
  void everyAnswerIsAsDescribed() {
    TreeSet<String> missing = new TreeSet<>();
    List<String> wrong = new ArrayList<>();
    document
        .path("paths")
        .properties()
        .forEach(
            path -> {
              JsonNode schema =
                  path.getValue().at("/get/responses/200/content/application~1json/schema");
              if (schema.isMissingNode()) {
                return;
              }
              if (!ADDRESSES.containsKey(path.getKey())) {
                missing.add(path.getKey());
              }
              for (String address : ADDRESSES.getOrDefault(path.getKey(), List.of())) {
                wrong.addAll(faults(address, schema));
              }
            });
    assertThat(missing).as("routes without an address in OpenApiAnswersTest.ADDRESSES").isEmpty();
    assertThat(wrong).as("put what differs into src/main/resources/openapi").isEmpty();
  }

  private static List<String> faults(String address, JsonNode schema) {
    String asked =
        address
            .replace("{faulty}", String.valueOf(faulty))
            .replace("{corrected}", String.valueOf(corrected));
    Api.Answer answer = api.get(asked);
    ok(answer);
    return faults(answer.json(), schema).stream().map(fault -> asked + ": " + fault).toList();
  }

  private static List<String> faults(JsonNode value, JsonNode schema) {
    ObjectNode whole = new ObjectMapper().createObjectNode();
    whole.putArray("allOf").add(exact(schema.deepCopy()));
    whole.set("components", exact(document.path("components").deepCopy()));
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(whole)
        .validate(value)
        .stream()
        .map(Object::toString)
        .limit(5)
        .toList();
  }

  /** With no other properties than those that are named. */
  private static JsonNode exact(JsonNode schema) {
    schema.forEach(OpenApiAnswersTest::exact);
    if (schema instanceof ObjectNode node && node.has("properties") && node.has("type")) {
      node.put("additionalProperties", false);
    }
    return schema;
  }

  @Test
  void theAnswersHaveSomethingInThem() {
    assertThat(api.get("/api/v1/alarms?state=all").json().get("alarms")).isNotEmpty();
    assertThat(api.get("/api/v1/files/" + faulty + "/quarantine").json().get("rows")).isNotEmpty();
    assertThat(api.get("/api/v1/corrections" + FROM_UNKNOWN).json().get("corrections"))
        .isNotEmpty();
    assertThat(api.get("/api/v1/holds").json().get("holds")).isNotEmpty();
    assertThat(api.get("/api/v1/audit").json().get("entries")).isNotEmpty();
    JsonNode alarm = api.get("/api/v1/alarms/search?words=worn%20screen").json().at("/alarms/0");
    assertThat(alarm.at("/owner/name").asText()).isEqualTo("Alex");
    assertThat(alarm.get("finding").get("note").asText()).isEqualTo("again");
    assertThat(alarm.get("causeChecks")).isNotEmpty();
    assertThat(api.get("/api/v1/rolls").json().get("rolls")).isNotEmpty();
    assertThat(api.get("/api/v1/alarms/1/rolls").json().get("rolls")).isNotEmpty();
    assertThat(api.get("/api/v1/handover").json().at("/signed/signatures")).isNotEmpty();
    assertThat(api.get("/api/v1/handover/notes").json().get("notes")).isNotEmpty();
    assertThat(api.get("/api/v1/alarm-figures").json().at("/figures/frequent")).isNotEmpty();
    assertThat(api.get("/api/v1/alarm-figures/spared").json().get("topics")).isNotEmpty();
    assertThat(api.get("/api/v1/telling/rules").json().get("rules")).isNotEmpty();
    assertThat(api.get("/api/v1/tokens").json().get("tokens")).isNotEmpty();
    assertThat(api.get("/api/v1/me").json().get("guests")).isNotEmpty();
  }

  @Test
  void refusalsHaveTheOneShape() {
    JsonNode error = document.at("/components/schemas/Error");
    for (Api.Answer refused :
        List.of(
            api.get("/api/v1/alarms/999999"),
            api.get("/api/v1/series"),
            api.get("/api/v1/audit?format=xml"),
            api.get("/api/v1/audit?from=yesterday"),
            api.send(api.request("/api/v1/tests").POST(BodyPublishers.ofString("{}"))))) {
      assertThat(refused.status()).isGreaterThanOrEqualTo(400).isLessThan(500);
      assertThat(faults(refused.json(), error)).isEmpty();
    }
  }

  @Test
  void whatIsNotDescribedIsFound() {
    ObjectNode board = (ObjectNode) api.get("/api/v1/board").json();
    JsonNode schema =
        document.at("/paths/~1api~1v1~1board/get/responses/200/content/application~1json/schema");
    assertThat(faults(board, schema)).isEmpty();
    ((ObjectNode) board.get("lines").get(0)).put("colour", "red");
    assertThat(faults(board, schema)).hasSize(1).allMatch(fault -> fault.contains("colour"));
  }
}
