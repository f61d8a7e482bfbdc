package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.cli.RunningJar.Ended;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.web.Api;
import dev.filmward.web.SmallFilm;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packaged jar as a black box: what only there can be missing, and what it survives. */
class PackagedJarIT {
  private static final String CHART_FILE = "/webjars/chart.js/4.5.1/dist/chart.umd.min.js";
  private static final Map<String, String> TYPES =
      Map.of(
          "html", "text/html",
          "js", "text/javascript",
          "css", "text/css",
          "svg", "image/svg+xml",
          "woff2", "font/woff2",
          "txt", "text/plain");

  @TempDir private Path folder;

  @Test
  void servesEveryPageAndAllThatItRefersTo() throws Exception {
    try (ServedJar served = RunningJar.serve(folder, folder.resolve("data"), 0)) {
      TreeSet<String> addresses = new TreeSet<>(WebFiles.addresses());
      assertThat(addresses).contains("/index.html", "/layer.html", "/alarms.html", "/help.html");
      addresses.addAll(WebFiles.references());
      addresses.add("/");
      assertThat(addresses).contains(CHART_FILE);
      for (String address : addresses) {
        Api.Answer answer = served.api().get(address);
        assertThat(answer.status()).as(address).isEqualTo(200);
        assertThat(answer.text()).as(address).isNotEmpty();
        String type = TYPES.get(address.substring(address.lastIndexOf('.') + 1));
        assertThat(answer.header("Content-Type")).as(address).startsWith(type == null ? "" : type);
      }
      assertThat(served.api().get(CHART_FILE).text()).contains("Chart.js v4.5.1");
    }
  }

  @Test
  void aFileInTheInboxIsOnTheChartsWithinTwoSeconds() throws Exception {
    Path data = folder.resolve("data");
    SmallFilm film = SmallFilm.withSampleAt(25, Instant.now());
    try (ServedJar served = RunningJar.serve(folder, data, 0)) {
      Path inbox = data.resolve("inbox");
      Path part = Files.writeString(inbox.resolve("a.csv.part"), film.usual(0, 25));
      long start = System.nanoTime();
      Files.move(part, inbox.resolve("a.csv"), StandardCopyOption.ATOMIC_MOVE);
      while (served.api().series(1).get("columns").get("mean").size() < 25) {
        Thread.sleep(20);
        assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(2));
      }
      Await.until("the file is put away", () -> Files.exists(inbox.resolve("done/a.csv")));
      expectASecondProcessToBeRefused(data);
      expectACleanStop(served);
    }
  }

  private void expectASecondProcessToBeRefused(Path data) throws Exception {
    Path csv = Files.writeString(folder.resolve("b.csv"), SmallFilm.HEADER);
    Path other = Files.createDirectory(folder.resolve("other"));
    Ended second = RunningJar.run(other, "import", "--data", data, csv);
    assertThat(second.status()).isEqualTo(1);
    assertThat(second.out()).isEmpty();
    assertThat(second.err()).contains("in use by another Filmward").doesNotContain("\tat ");
  }

  private void expectACleanStop(ServedJar served) throws Exception {
    assertThat(served.jar().stop()).isIn(0, 128 + 15);
    assertThat(served.jar().messages()).doesNotContain("ERROR").doesNotContain("Exception");
    assertThat(leftBehind()).isEmpty();
  }

  private List<Path> leftBehind() throws Exception {
    try (Stream<Path> files = Files.list(RunningJar.temporary(folder))) {
      return files.toList();
    }
  }

  @Test
  void theDemoShowsBothLinesGoesOnAndLeavesNothingBehind() throws Exception {
    RunningJar jar = RunningJar.start(folder, "demo", "--port", 0, "--interval", 1);
    try (ServedJar served = RunningJar.serving(jar)) {
      JsonNode board = served.api().get("/api/v1/board").json();
      assertThat(board.get("demo").asBoolean()).isTrue();
      assertThat(board.get("lines"))
          .extracting(line -> line.get("line").asText())
          .containsExactlyInAnyOrder("Blown 1", "Blown 2");
      assertThat(served.api().get("/api/v1/alarms?state=all").json().get("alarms")).isNotEmpty();
      List<String> before = lastSamples(board);
      Await.until(
          "each line has a new sample",
          () ->
              lastSamples(served.api().get("/api/v1/board").json()).stream()
                  .noneMatch(before::contains));
      expectACleanStop(served);
    }
  }

  private static List<String> lastSamples(JsonNode board) {
    return board.get("lines").findValues("lastSample").stream().map(JsonNode::toString).toList();
  }

  @Test
  void aRestartShowsTheSamePointsSignalsLimitsAndAlarms() throws Exception {
    Path data = folder.resolve("data");
    SmallFilm film = SmallFilm.withSampleAt(27, Instant.now());
    List<JsonNode> before;
    try (ServedJar served = RunningJar.serve(folder, data, 0)) {
      served.api().upload("baseline.csv", film.usual(0, 25));
      served.api().freeze();
      served.api().upload("thin.csv", film.thinnerSkin(25, 27, 1));
      served.api().post("/api/v1/alarms/1/acknowledge", "{\"by\": \"Kim\"}");
      before = everything(served.api());
      served.jar().stop();
    }
    assertThat(before.get(1).get("signals")).isNotEmpty();
    assertThat(before.get(3).get("alarms")).hasSize(1);
    try (ServedJar served = RunningJar.serve(folder, data, 0)) {
      assertThat(everything(served.api())).isEqualTo(before);
      served.jar().kill();
    }
    try (ServedJar served = RunningJar.serve(folder, data, 0)) {
      assertThat(everything(served.api())).isEqualTo(before);
    }
  }

  private static List<JsonNode> everything(Api api) {
    return List.of(
        api.series(0),
        api.series(1),
        api.series(2),
        api.get("/api/v1/alarms?state=all").json(),
        api.get("/api/v1/files").json(),
        api.get("/api/v1/lines/Blown%201/limits?structure=DUO-50").json());
  }

  @Test
  void anImportKilledInTheMiddleIsMadeWholeByTheNext() throws Exception {
    int samples = 60_000;
    long readings = samples * SmallFilm.LANES * 2L;
    Path data = folder.resolve("data");
    Path csv = folder.resolve("large.csv");
    Files.writeString(csv, SmallFilm.withSampleAt(samples, Instant.now()).usual(0, samples));
    Path structures = Files.writeString(folder.resolve("s.yaml"), SmallFilm.STRUCTURES);
    Object[] command = {
      "import", "--data", data, "--structures", structures, "--format", "json", csv
    };
    try (RunningJar jar = RunningJar.start(folder, command)) {
      Path database = data.resolve("filmward.db");
      Await.until("the first samples are kept", () -> hasSamples(database));
      assertThat(jar.isAlive()).isTrue();
      jar.kill();
    }
    JsonNode again = Await.json(RunningJar.run(folder, command).out()).get("files").get(0);
    assertThat(again.get("known").asLong()).as("kept before").isPositive().isLessThan(readings);
    assertThat(again.get("known").asLong() + again.get("new").asLong()).isEqualTo(readings);
    assertThat(again.get("corrected").asLong()).isZero();
    try (ServedJar served = RunningJar.serve(folder, data, 0)) {
      JsonNode series = served.api().series(1);
      assertThat(series.get("readings").asLong()).isEqualTo(readings / 2);
      assertThat(series.get("columns").get("sample")).hasSize(samples).doesNotHaveDuplicates();
      assertThat(served.api().get("/api/v1/files").json().get("files")).hasSize(1);
    }
  }

  private static boolean hasSamples(Path database) {
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + database + "?open_mode=1");
        Statement statement = connection.createStatement();
        ResultSet found = statement.executeQuery("SELECT count(*) FROM production")) {
      return found.getLong(1) > 0;
    } catch (SQLException e) {
      return false; // the file or its tables are not there yet
    }
  }
}
