package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.encoder.Encoder;
import ch.qos.logback.core.read.ListAppender;
import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.access.PeopleDesk;
import dev.filmward.access.TestPeople;
import dev.filmward.access.TokenDesk;
import dev.filmward.people.Permission;
import dev.filmward.people.PersonName;
import dev.filmward.people.Role;
import dev.filmward.people.Secret;
import dev.filmward.pipeline.IncomingFile;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.Store;
import dev.filmward.web.Api;
import dev.filmward.web.WebServer;
import dev.filmward.web.WebServer.Options;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;

/** What comes from outside cannot write lines of its own into the log, nor do secrets get there. */
class LogLinesTest {
  private static final String HOSTILE =
      "a.csv\r\n12:00:00 ERROR Plant: all alarms off\u2028\u0085\u001b[2J\u202e\"}";

  private final LoggerContext context = (LoggerContext) LoggerFactory.getILoggerFactory();
  private final Logger root = context.getLogger("dev.filmward");
  private final Logger requests = context.getLogger(LogOption.REQUESTS);
  private final ListAppender<ILoggingEvent> heard =
      new ListAppender<>() {
        @Override
        protected void append(ILoggingEvent event) {
          event.prepareForDeferredProcessing(); // the request's id belongs to its thread
          super.append(event);
        }
      };
  private final Encoder<ILoggingEvent> text = new TextLines();
  private final Encoder<ILoggingEvent> json = new JsonLines();
  private Level before;

  @TempDir private Path folder;

  @BeforeEach
  void listen() {
    before = requests.getLevel();
    requests.setLevel(Level.INFO);
    heard.start();
    root.addAppender(heard);
    root.setAdditive(false);
  }

  @AfterEach
  void stop() {
    root.setAdditive(true);
    root.detachAppender(heard);
    requests.setLevel(before);
  }

  @Test
  void aHostileNameStaysOnItsLineInBothForms() throws Exception {
    root.warn("{} was refused: {}", HOSTILE, "no header");
    root.error("it failed", new IllegalStateException("cannot read " + HOSTILE));
    String plain = encoded(text, 0);
    assertThat(plain.lines().toList()).hasSize(1);
    assertThat(plain).contains("\\u000d\\u000a", "\\u2028", "\\u0085", "\\u001b", "\\u202e");
    assertThat(plain.chars()).noneMatch(c -> c != '\n' && Character.isISOControl(c));
    List<String> fault = encoded(text, 1).lines().toList();
    assertThat(fault.subList(1, fault.size()))
        .isNotEmpty()
        .allMatch(line -> line.startsWith("  | "));
    for (int i = 0; i < 2; i++) {
      assertThat(encoded(json, i).lines().toList()).hasSize(1);
      assertThat(encoded(json, i).chars()).allMatch(c -> c == '\n' || (c >= ' ' && c < 127));
    }
    assertThat(line(0).get("message").asText()).isEqualTo(HOSTILE + " was refused: no header");
    assertThat(line(0).get("level").asText()).isEqualTo("WARN");
    assertThat(line(1).get("fault").asText()).contains("LogLinesTest");
  }

  @Test
  void aRequestIsOneLineWithItsTemplateAndWithoutItsSecrets() throws Exception {
    try (Plant plant = new Plant(Store.open(folder), Clock.systemUTC(), ZoneOffset.UTC);
        WebServer server =
            WebServer.start(plant, new Options("127.0.0.1", 0, Options.Purpose.PLANT))) {
      Api api = new Api(server.port());
      Api.Answer answer =
          api.send(
              api.change("/api/v1/alarms/12345/acknowledge?token=SECRET1", "text/plain", "SECRET2")
                  .header("Authorization", "Bearer SECRET3")
                  .header("Cookie", "filmward=SECRET4"));
      api.get("/api/v1/lines/" + Api.encoded(HOSTILE) + "/modes");
      api.get("/index.html");
      assertThat(api.get("/nothing/" + Api.encoded(HOSTILE)).status()).isEqualTo(404);
      Await.until("four requests are noted", () -> heardRequests().size() >= 4);
      JsonNode first = heardRequests().get(0);
      assertThat(first.get("method").asText()).isEqualTo("POST");
      assertThat(first.get("route").asText()).isEqualTo("/api/v1/alarms/{id}/acknowledge");
      assertThat(first.get("status").asInt()).isEqualTo(answer.status()).isBetween(400, 499);
      assertThat(first.get("ms").asDouble()).isPositive();
      assertThat(first.get("request").asText())
          .isEqualTo(answer.header("X-Request-Id"))
          .matches("[0-9a-f]{16}");
      assertThat(heardRequests().subList(1, 4))
          .extracting(request -> request.get("route").asText())
          .containsExactly("/api/v1/lines/{line}/modes", "page", "none");
      for (int i = 0; i < heard.list.size(); i++) {
        assertThat(encoded(text, i) + encoded(json, i))
            .doesNotContain("SECRET", "12345", "alarms off");
      }
    }
  }

  @Test
  void aRequestNamesWhoAsksByNumberAlone() throws Exception {
    Clock clock = Clock.systemUTC();
    try (Plant plant = new Plant(Store.open(folder), clock, ZoneOffset.UTC);
        WebServer server =
            WebServer.start(plant, new Options("127.0.0.1", 0, Options.Purpose.PLANT))) {
      Secret session = TestPeople.signedIn(plant.store(), clock, "Quintessa", Role.VIEWER);
      TokenDesk.Made gauge =
          new TokenDesk(plant.store(), clock)
              .add(
                  new PersonName("Zirconia"),
                  Set.of(Permission.READ),
                  clock.instant().plusSeconds(60),
                  "test");
      Api person = new Api(server.port()).as(session);
      Api machine = new Api(server.port());
      assertThat(person.get("/api/v1/board").status()).isEqualTo(200);
      assertThat(person.get("/api/v1/people").status()).isEqualTo(403);
      String bearer = "Bearer " + gauge.secret().text();
      assertThat(
              machine
                  .send(machine.request("/api/v1/board").GET().header("Authorization", bearer))
                  .status())
          .isEqualTo(200);
      assertThat(machine.get("/api/v1/board").status()).isEqualTo(401);
      Await.until("four requests are noted", () -> heardRequests().size() >= 4);
      long id = new PeopleDesk(plant.store(), clock).named("Quintessa").orElseThrow().id();
      assertThat(heardRequests())
          .extracting(request -> request.path("person").asText("nobody"))
          .containsExactly("person-" + id, "person-" + id, "token-" + gauge.token().id(), "nobody");
      for (int i = 0; i < heard.list.size(); i++) {
        assertThat(encoded(text, i) + encoded(json, i)).doesNotContain("Quintessa", "Zirconia");
      }
    }
  }

  @Test
  void signInsAndRefusalsAreTheirOwnLinesWithoutNamesAndSecrets() throws Exception {
    Clock clock = Clock.systemUTC();
    try (Plant plant = new Plant(Store.open(folder), clock, ZoneOffset.UTC);
        WebServer server =
            WebServer.start(plant, new Options("127.0.0.1", 0, Options.Purpose.PLANT))) {
      long id = TestPeople.add(plant.store(), clock, "Quintessa", Role.VIEWER).id();
      Api person = new Api(server.port());
      String wrong = "{\"name\": \"Quintessa\", \"password\": \"WRONG-SECRET\"}";
      assertThat(person.post("/api/v1/session", wrong).status()).isEqualTo(401);
      person.signIn("Quintessa");
      for (int i = 0; i < 5; i++) {
        assertThat(person.get("/api/v1/people").status()).isEqualTo(403);
      }
      assertThat(List.copyOf(heard.list))
          .filteredOn(event -> !event.getLoggerName().equals(LogOption.REQUESTS))
          .extracting(ILoggingEvent::getFormattedMessage)
          .filteredOn(line -> line.contains("ign") || line.contains("refused"))
          .containsExactly(
              "Sign-in from 127.0.0.1 wants PASSWORD",
              "person-" + id + " signed in from 127.0.0.1",
              "person-" + id + " was refused what needs administer: 1 times so far",
              "person-" + id + " was refused what needs administer: 2 times so far",
              "person-" + id + " was refused what needs administer: 4 times so far");
      for (int i = 0; i < heard.list.size(); i++) {
        assertThat(encoded(text, i) + encoded(json, i))
            .doesNotContain("Quintessa", "WRONG-SECRET", TestPeople.PASSWORD);
      }
    }
  }

  @Test
  void aFileWithAHostileNameIsRefusedOnOneLine() throws Exception {
    try (Plant plant = new Plant(Store.open(folder), Clock.systemUTC(), ZoneOffset.UTC)) {
      byte[] bytes = "nothing,useful\n".getBytes(StandardCharsets.UTF_8);
      plant.read(new IncomingFile(HOSTILE, "watch", () -> new ByteArrayInputStream(bytes)));
      for (int i = 0; i < heard.list.size(); i++) {
        assertThat(encoded(text, i).lines().toList()).hasSize(1);
      }
    }
  }

  private List<JsonNode> heardRequests() {
    return List.copyOf(heard.list).stream()
        .filter(event -> event.getLoggerName().equals(LogOption.REQUESTS))
        .map(event -> new String(json.encode(event), StandardCharsets.UTF_8))
        .map(LogLinesTest::parsed)
        .toList();
  }

  private static JsonNode parsed(String line) {
    try {
      return Await.json(line);
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private JsonNode line(int index) throws Exception {
    return Await.json(encoded(json, index));
  }

  private String encoded(Encoder<ILoggingEvent> encoder, int index) {
    return new String(encoder.encode(heard.list.get(index)), StandardCharsets.UTF_8);
  }
}
