package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.access.TokenDesk;
import dev.filmward.people.Permission;
import dev.filmward.people.PersonName;
import dev.filmward.people.Role;
import dev.filmward.people.Secret;
import dev.filmward.web.Api.Answer;
import java.net.http.HttpRequest;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The table of routes and roles, asked of the real server. */
class PermissionsTest {
  private static final List<String> WHO =
      List.of("nobody", "viewer", "shift-lead", "engineer", "quality", "administrator", "sender");

  @TempDir private static Path folder;
  private static ServedPlant served;
  private static ServedPlant open;
  private static Secret token;

  @BeforeAll
  static void serve() throws Exception {
    served = ServedPlant.in(folder.resolve("shut"));
    open =
        ServedPlant.in(
            folder.resolve("open"), served.plant().clock(), DoorOptions.SHUT.with(Reading.OPEN));
    token =
        new TokenDesk(served.plant().store(), served.plant().clock())
            .add(
                new PersonName("Gauge 3"),
                Set.of(Permission.SEND_FILES),
                ServedPlant.NOW.plus(Duration.ofDays(1)),
                "test")
            .secret();
  }

  @AfterAll
  static void stop() {
    open.close();
    served.close();
  }

  /** A row of the table: what each of {@link #WHO} gets. */
  record Row(String method, String path, List<String> outcomes) {
    static Row of(String line) {
      List<String> cells =
          Arrays.stream(line.split("\\|", -1)).map(String::strip).collect(Collectors.toList());
      return new Row(cells.get(0), cells.get(1), cells.subList(2, cells.size()));
    }

    String name() {
      return method + " " + path;
    }
  }

  static List<Row> table() throws Exception {
    try (var in = PermissionsTest.class.getResourceAsStream("permissions.csv")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .skip(1)
          .map(Row::of)
          .toList();
    }
  }

  @Test
  void everyRouteStandsInTheTableOnce() throws Exception {
    List<String> routes =
        served.server().routes().stream().map(one -> one.method() + " " + one.path()).toList();
    assertThat(table())
        .extracting(Row::name)
        .containsExactlyInAnyOrderElementsOf(routes)
        .doesNotHaveDuplicates();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("table")
  void aRouteDoesForEachRoleWhatTheTableSays(Row row) {
    assertThat(row.outcomes()).hasSize(WHO.size());
    for (int i = 0; i < WHO.size(); i++) {
      Answer answer = ask(served, row, WHO.get(i));
      assertThat(outcome(answer))
          .as("%s for %s: %s", row, WHO.get(i), answer.text())
          .isEqualTo(row.outcomes().get(i));
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("table")
  void whereReadingIsOpenNobodyMayLookAndNothingElse(Row row) {
    boolean mayReadersDo = row.outcomes().get(1).equals("allowed");
    // a table as a workbook changes nothing, though it is asked for with a body; nor does it to
    // leave what one waits for
    boolean isLook =
        mayReadersDo && (row.method().equals("GET") || row.path().matches(".*/(tables|work)/.*"));
    String expected = isLook ? "allowed" : row.outcomes().get(0);
    assertThat(outcome(ask(open, row, "nobody"))).as(row.name()).isEqualTo(expected);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("table")
  void askingForTheHeadersAloneIsNoWayAround(Row row) {
    if (row.method().equals("GET")) {
      Api nobody = served.nobody();
      HttpRequest.Builder head =
          nobody.request(address(row)).method("HEAD", HttpRequest.BodyPublishers.noBody());
      assertThat(nobody.send(head).status()).isEqualTo(405);
    }
  }

  private static Answer ask(ServedPlant plant, Row row, String who) {
    Api api = api(plant, who);
    HttpRequest.Builder request =
        row.method().equals("GET")
            ? api.request(address(row)).GET()
            : api.change(address(row), "application/json", "{}");
    return api.send(
        who.equals("sender") ? request.header("Authorization", "Bearer " + token.text()) : request);
  }

  /** A session of its own for each request, for some of them end it. */
  private static Api api(ServedPlant plant, String who) {
    boolean isPerson = !who.equals("nobody") && !who.equals("sender");
    return isPerson ? plant.as("A " + who, Role.fromWord(who)) : plant.nobody();
  }

  private static String address(Row row) {
    return row.path().replace("{id}", "999").replace("{line}", "Blown%201");
  }

  private static String outcome(Answer answer) {
    if (answer.status() != 401 && answer.status() != 403) {
      return "allowed";
    }
    assertThat(answer.json().get("error").get("what").asText()).isNotBlank();
    assertThat(answer.json().get("error").get("instead").asText()).isNotBlank();
    return String.valueOf(answer.status());
  }
}
