package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.pipeline.TestPlant;
import dev.filmward.web.SmallFilm;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * An import is killed at a hundred random moments. What it had said is done is there, nothing is
 * there twice, and in the end points, signals and alarms are those of an import that nobody killed.
 */
class KilledImportIT {
  private static final int KILLS = 100;
  private static final int BASELINE = 25;
  private static final int SAMPLES_IN_FILE = 300;
  private static final int FILES = 12;
  private static final int ALL = BASELINE + FILES * SAMPLES_IN_FILE;
  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");
  private static final SmallFilm FILM = SmallFilm.withSampleAt(ALL, NOW);

  @TempDir private Path folder;
  private long usualMs;

  @Test
  void whatWasConfirmedSurvivesAHundredKillsAndNothingIsThereTwice() throws Exception {
    long seed = System.nanoTime();
    Random random = new Random(seed);
    List<Path> files = files();
    List<String> undisturbed = undisturbed(files);
    Path data = null;
    int confirmedBefore = FILES;
    for (int kill = 0; kill < KILLS; kill++) {
      if (confirmedBefore == FILES) {
        data = withBaseline(folder.resolve("data" + kill));
        confirmedBefore = 0;
      }
      int confirmed = Math.max(confirmedBefore, confirmedWhenKilled(data, files, random));
      assertThat(storedSamples(data))
          .as("kill %d, seed %d", kill, seed)
          .isBetween(BASELINE + (long) confirmed * SAMPLES_IN_FILE, (long) ALL);
      assertThat(readingsStoredTwice(data)).as("kill %d, seed %d", kill, seed).isZero();
      confirmedBefore = confirmed;
    }
    importAll(data, files);
    try (TestPlant plant = new TestPlant(data, NOW)) {
      assertThat(plant.picture()).as("seed %d", seed).isEqualTo(undisturbed);
    }
  }

  private List<Path> files() throws Exception {
    List<Path> files = new ArrayList<>();
    for (int i = 0; i < FILES; i++) {
      int first = BASELINE + i * SAMPLES_IN_FILE;
      int thin = first + 100;
      String csv =
          FILM.usual(first, thin)
              + body(FILM.thinnerSkin(thin, thin + 20, 1))
              + body(FILM.usual(thin + 20, first + SAMPLES_IN_FILE));
      files.add(Files.writeString(folder.resolve("f%02d.csv".formatted(i)), csv));
    }
    return files;
  }

  private static String body(String csv) {
    return csv.substring(SmallFilm.HEADER.length());
  }

  private static Path withBaseline(Path data) throws Exception {
    try (TestPlant plant = new TestPlant(data, NOW)) {
      byte[] structures = SmallFilm.STRUCTURES.getBytes(StandardCharsets.UTF_8);
      plant.plant().learnStructures("film.yaml", structures);
      plant.read("baseline.csv", FILM.usual(0, BASELINE));
      plant.freeze(SmallFilm.LINE, SmallFilm.CODE);
    }
    return data;
  }

  /** Also tells how long it takes, from start to end. */
  private List<String> undisturbed(List<Path> files) throws Exception {
    Path data = withBaseline(folder.resolve("undisturbed"));
    long start = System.nanoTime();
    importAll(data, files);
    usualMs = Duration.ofNanos(System.nanoTime() - start).toMillis();
    try (TestPlant plant = new TestPlant(data, NOW)) {
      List<String> picture = plant.picture();
      // twelve times a skin that is thinner by a micrometre
      int alarms = plant.plant().store().read(tables -> tables.alarms().newest(100).size());
      assertThat(alarms).isEqualTo(FILES);
      return picture;
    }
  }

  private void importAll(Path data, List<Path> files) throws Exception {
    RunningJar.Ended ended = RunningJar.run(folder, command(data, files));
    assertThat(ended.status()).as(ended.err()).isZero();
    assertThat(confirmed(ended.out())).isEqualTo(FILES);
  }

  private int confirmedWhenKilled(Path data, List<Path> files, Random random) throws Exception {
    try (RunningJar jar = RunningJar.start(folder, command(data, files))) {
      Thread.sleep(usualMs / 4 + random.nextLong(usualMs));
      jar.kill();
      return confirmed(jar.restOfOutput());
    }
  }

  private static Object[] command(Path data, List<Path> files) {
    List<Object> command = new ArrayList<>(List.of("import", "--data", data, "--format", "json"));
    command.addAll(files);
    return command.toArray();
  }

  /** Files whose whole line was printed, each with all of its readings. */
  private static int confirmed(String out) throws Exception {
    int confirmed = 0;
    for (String line : out.substring(0, out.lastIndexOf('\n') + 1).lines().toList()) {
      JsonNode file = Await.json(line).get("files").get(0);
      assertThat(file.get("new").asLong() + file.get("known").asLong())
          .isEqualTo(SAMPLES_IN_FILE * SmallFilm.LANES * 2L);
      assertThat(file.get("corrected").asLong()).isZero();
      confirmed++;
    }
    return confirmed;
  }

  private static long storedSamples(Path data) throws Exception {
    return number(data, "SELECT count(*) FROM (SELECT DISTINCT roll, sample FROM reading)");
  }

  private static long readingsStoredTwice(Path data) throws Exception {
    return number(
        data,
        "SELECT count(*) FROM (SELECT 1 FROM reading GROUP BY line, structure, roll, sample, lane,"
            + " layer HAVING count(*) > 1)");
  }

  /** As another program would ask, through the documented view. */
  private static long number(Path data, String sql) throws Exception {
    String url = "jdbc:sqlite:" + data.resolve("filmward.db").toAbsolutePath();
    try (Connection connection = DriverManager.getConnection(url);
        Statement statement = connection.createStatement();
        ResultSet answer = statement.executeQuery(sql)) {
      answer.next();
      return answer.getLong(1);
    }
  }
}
