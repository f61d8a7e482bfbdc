package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.cli.RunningJar.Ended;
import dev.filmward.cli.RunningJar.Limits;
import dev.filmward.web.SmallFilm;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** No file may grow beyond a length, as on a full disk, while files are imported. */
class DiskFullIT {
  // less than the SQLite library needs to unpack itself would be about another fault
  private static final int SAMPLES = 40_000;
  private static final long READINGS = SAMPLES * SmallFilm.LANES * 2L;

  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(longs = {1_500, 2_500, 4_000})
  void anImportThatRunsOutOfRoomSaysSoAndTheNextOneGoesOn(long fileKb) throws Exception {
    Object[] command = command();

    Ended full = RunningJar.run(folder, new Limits(400, fileKb), command);
    assertThat(full.status()).isEqualTo(1);
    assertThat(full.out()).isEmpty();
    assertThat(full.err())
        .containsIgnoringCase("disk")
        .contains("Free some room")
        .contains("do it again")
        .doesNotContain("\tat ");

    Ended again = RunningJar.run(folder, command);
    assertThat(again.status()).as(again.err()).isZero();
    JsonNode file = Await.json(again.out()).get("files").get(0);
    assertThat(file.get("known").asLong() + file.get("new").asLong()).isEqualTo(READINGS);
    assertThat(file.get("corrected").asLong()).isZero();

    Ended third = RunningJar.run(folder, command);
    assertThat(Await.json(third.out()).get("files").get(0).get("known").asLong())
        .isEqualTo(READINGS);
  }

  private Object[] command() throws Exception {
    Path csv = folder.resolve("large.csv");
    SmallFilm film = SmallFilm.withSampleAt(SAMPLES, Instant.parse("2026-11-20T12:00:00Z"));
    Files.writeString(csv, film.usual(0, SAMPLES));
    Path structures = Files.writeString(folder.resolve("s.yaml"), SmallFilm.STRUCTURES);
    return new Object[] {
      "import",
      "--data",
      folder.resolve("data"),
      "--structures",
      structures,
      "--format",
      "json",
      csv
    };
  }
}
