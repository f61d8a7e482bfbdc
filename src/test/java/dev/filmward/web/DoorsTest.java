package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.web.Api.Answer;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What keeps a browser and foreign pages from doing harm. */
class DoorsTest {
  private static final String CHART_FILE = "/webjars/chart.js/4.5.1/dist/chart.umd.min.js";

  @TempDir private static Path folder;
  private static ServedPlant served;
  private static Api api;

  @BeforeAll
  static void serve() throws Exception {
    served = ServedPlant.in(folder).withFrozenLimits();
    api = served.api();
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 26, 1));
  }

  @AfterAll
  static void stop() {
    served.close();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/",
        "/layer.html",
        "/app/start.js",
        CHART_FILE,
        "/api/v1/board",
        "/api/v1/nothing"
      })
  void everyAnswerForbidsForeignCodeAndFrames(String path) {
    Answer answer = api.get(path);
    assertThat(answer.header("Content-Security-Policy"))
        .contains("default-src 'self'", "script-src 'self'", "style-src 'self'")
        .contains("base-uri 'none'", "frame-ancestors 'none'", "form-action 'self'")
        .doesNotContain("unsafe");
    assertThat(answer.header("X-Content-Type-Options")).isEqualTo("nosniff");
    assertThat(answer.header("Referrer-Policy")).isEqualTo("no-referrer");
    assertThat(answer.header("X-Frame-Options")).isEqualTo("DENY");
    assertThat(answer.header("Cross-Origin-Resource-Policy")).isEqualTo("same-origin");
    assertThat(answer.header("Permissions-Policy")).contains("camera=()", "microphone=()");
    assertThat(answer.header("Strict-Transport-Security")).as("without TLS").isEmpty();
    assertThat(answer.header("Server")).doesNotContain("Jetty");
  }

  @Test
  void figuresAreNeverTakenFromACache() {
    assertThat(api.get("/api/v1/board").header("Cache-Control")).isEqualTo("no-store");
  }

  @Test
  void whatChangesSomethingNeedsOurHeader() {
    Answer answer =
        api.send(
            api.request("/api/v1/alarms/1/acknowledge")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString("{\"by\": \"Kim\"}")));
    expectForbidden(answer);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "http://example.org",
        "http://127.0.0.1",
        "http://127.0.0.1.example.org",
        "null",
        "no address at all"
      })
  void whatChangesSomethingMustComeFromOurPages(String origin) {
    expectForbidden(
        api.send(
            api.change("/api/v1/alarms/1/acknowledge", "application/json", "{\"by\": \"Kim\"}")
                .header("Origin", origin)));
  }

  @Test
  void ourOwnPagesMayChangeSomething() {
    Answer answer =
        api.send(
            api.change("/api/v1/limits/freeze", "application/json", "{}")
                .header("Origin", "http://127.0.0.1:" + served.port()));
    assertThat(answer.status()).isEqualTo(400);
  }

  private static void expectForbidden(Answer answer) {
    assertThat(answer.status()).isEqualTo(403);
    assertThat(answer.json().get("error").get("what").asText()).isNotBlank();
    assertThat(api.get("/api/v1/alarms/1").json().get("acknowledged").isNull()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"filmward.example.org", "example.org:80", "127.0.0.1.example.org", ""})
  void aForeignNameForThisMachineIsRefused(String host) throws IOException {
    assertThat(statusLine(host)).matches("HTTP/1.1 40[03] .*");
  }

  @ParameterizedTest
  @ValueSource(strings = {"localhost", "LOCALHOST:8090", "127.0.0.1", "[::1]:8090"})
  void aNameOfTheLoopbackIsFine(String host) throws IOException {
    assertThat(statusLine(host)).startsWith("HTTP/1.1 200 ");
  }

  private static String statusLine(String host) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), served.port())) {
      String request = "GET /api/v1/me HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n\r\n";
      socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
      String answer =
          new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
      return answer.lines().findFirst().orElse("");
    }
  }

  @Test
  void aBodyThatIsTooLargeIsRefused() {
    String longCause = "{\"cause\": \"" + "K".repeat(100_000) + "\", \"action\": \"a\"}";
    Answer json = api.post("/api/v1/alarms/1/finding", longCause);
    assertThat(json.status()).isEqualTo(413);
    assertThat(json.json().get("error").get("what").asText()).isNotBlank();
    String yaml = "#".repeat(5 << 20);
    Answer structures = api.send(api.change("/api/v1/structures?name=s.yaml", "text/yaml", yaml));
    assertThat(structures.status()).isEqualTo(413);
  }

  /** A body without a length is counted as it streams. */
  @Test
  void aChunkedBodyThatIsTooLargeIsRefused() {
    byte[] large =
        ("{\"cause\": \"" + "K".repeat(100_000) + "\"}").getBytes(StandardCharsets.UTF_8);
    Answer json = api.send(chunked("/api/v1/alarms/1/finding", large));
    assertThat(json.status()).isEqualTo(413);
    assertThat(json.json().get("error").get("what").asText()).contains("64000 bytes");
    Answer structures = api.send(chunked("/api/v1/structures?name=s.yaml", new byte[5 << 20]));
    assertThat(structures.status()).isEqualTo(413);
    Answer mapping = api.send(chunked("/api/v1/mappings", new byte[2 << 20]));
    assertThat(mapping.status()).isEqualTo(413);
  }

  private static HttpRequest.Builder chunked(String path, byte[] body) {
    return api.request(path)
        .header("X-Filmward", "1")
        .POST(BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(body)));
  }

  @Test
  void aTextThatIsTooLongIsRefused() {
    Answer answer =
        api.post(
            "/api/v1/alarms/1/finding",
            "{\"cause\": \"" + "K".repeat(5000) + "\", \"action\": \"a\"}");
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.text()).hasSizeLessThan(500);
  }

  @Test
  void hostileNamesComeBackAsTextToTheLetter() {
    String line = "<img src=x onerror=alert(1)>";
    String sample = "=cmd|'/c calc'!A1";
    String roll = "\u202E\"><script>alert(2)</script>";
    String csv =
        SmallFilm.HEADER
            + "2026-11-20T12:00:00Z,\"%s\",DUO-50,\"%s\",\"%s\",1,20,30%n"
                .formatted(line, roll.replace("\"", "\"\""), sample);
    Answer file = api.upload("../../<b>&.csv", csv);
    assertThat(file.json().get("readings").asInt()).isEqualTo(2);
    assertThat(file.json().get("name").asText()).isEqualTo("../../<b>&.csv");
    JsonNode lines = api.get("/api/v1/board").json().get("lines");
    JsonNode hostile = lines.get(lines.get(0).get("line").asText().equals(line) ? 0 : 1);
    assertThat(hostile.get("line").asText()).isEqualTo(line);
    assertThat(hostile.get("lastSample").get("sample").asText()).isEqualTo(sample);
    assertThat(hostile.get("lastSample").get("roll").asText()).isEqualTo(roll);
    Answer series =
        api.get("/api/v1/series?structure=DUO-50&kind=layer&position=1&line=" + Api.encoded(line));
    assertThat(series.header("Content-Type")).startsWith("application/json");
    assertThat(series.json().get("columns").get("sample").get(0).asText()).isEqualTo(sample);
  }

  @ParameterizedTest
  @ValueSource(strings = {"A/B", "50 %", "a?b#c", "Größe ü", "..", "a\\b", ";x=1"})
  void aLineMayHaveAnyNameInAnAddress(String line) {
    Answer answer =
        api.get("/api/v1/lines/" + Api.encoded(line) + "/limits?structure=" + SmallFilm.CODE);
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
    assertThat(answer.json().get("limits")).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/../pom.xml",
        "/%2e%2e/pom.xml",
        "/web/../db/sqlite/V1__first_release.sql",
        "/db/sqlite/V1__first_release.sql",
        "/logback.xml",
        "/webjars/../logback.xml",
        "/webjars/%2e%2e/%2e%2e/logback.xml"
      })
  void nothingButThePagesAreServed(String path) {
    assertThat(api.get(path).status()).isIn(400, 404);
  }
}
