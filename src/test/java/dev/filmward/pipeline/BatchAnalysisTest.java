package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.film.Structures;
import dev.filmward.intake.FileRefused;
import dev.filmward.pipeline.Analysis.Series;
import dev.filmward.pipeline.BatchAnalysis.InputFile;
import dev.filmward.simulate.SampleRun;
import dev.filmward.simulate.SampleRuns;
import dev.filmward.store.TestDatabase;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Files give the same analysis in whatever order their rows come. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class BatchAnalysisTest {
  @Parameter private TestDatabase database;

  @TempDir private Path folder;

  private final SampleRun run = SampleRuns.all().get(1);
  private final List<String> lines =
      new String(run.files().get("readings.csv"), StandardCharsets.UTF_8).lines().toList();

  @Test
  void rowsInAnyOrderGiveTheSameSeries() throws Exception {
    long seed = new Random().nextLong();
    List<String> shuffled = new ArrayList<>(lines.subList(1, lines.size()));
    Collections.shuffle(shuffled, new Random(seed));
    assertThat(analyse(file("shuffled", shuffled))).as("seed %d", seed).isEqualTo(inOrder());
  }

  @Test
  void aFileTwiceGivesTheSameSeries() throws Exception {
    List<String> rows = lines.subList(1, lines.size());
    assertThat(analyse(file("one", rows), file("copy", rows))).isEqualTo(inOrder());
  }

  @Test
  void samplesCutBetweenFilesAreJoined() throws Exception {
    int cut = lines.size() / 2 + 3;
    assertThat(
            analyse(
                file("second", lines.subList(cut, lines.size())),
                file("first", lines.subList(1, cut))))
        .isEqualTo(inOrder());
  }

  @Test
  void theLaterOfTwoValuesForOnePlaceStands() throws Exception {
    List<String> rows = new ArrayList<>(lines.subList(1, lines.size()));
    String last = rows.get(rows.size() - 1);
    rows.add(7, last.substring(0, last.lastIndexOf(';')) + ";99,9");
    assertThat(analyse(file("corrected", rows))).isEqualTo(inOrder());
  }

  @Test
  void whatIsStoredGivesTheSameSeriesAsTheFiles() throws Exception {
    List<String> shuffled = new ArrayList<>(lines.subList(1, 1000));
    long seed = new Random().nextLong();
    Collections.shuffle(shuffled, new Random(seed));
    try (TestPlant plant = new TestPlant(database, folder, Instant.parse("2026-11-20T12:00:00Z"))) {
      plant.plant().learnStructures("structures.yaml", run.files().get("structures.yaml"));
      plant.plant().read(new IncomingFile("a.csv", "import", file("a", shuffled).opener()));
      List<Series> stored =
          new BatchAnalysis(
                  plant.plant().structures(), SampleRuns.PLANT_ZONE, AnalysisScope.everything())
              .analyse(plant.plant())
              .series();
      assertThat(stored)
          .as("seed %d", seed)
          .isEqualTo(analyse(file("in order", lines.subList(1, 1000))));
    }
  }

  private List<Series> inOrder() throws IOException, FileRefused {
    return analyse(file("readings", lines.subList(1, lines.size())));
  }

  private List<Series> analyse(InputFile... files) throws IOException, FileRefused {
    return new BatchAnalysis(
            new Structures(List.of(run.structure())),
            SampleRuns.PLANT_ZONE,
            AnalysisScope.everything())
        .analyse(List.of(files), rejection -> {})
        .series();
  }

  private InputFile file(String name, List<String> rows) {
    String text = lines.get(0) + "\n" + String.join("\n", rows) + "\n";
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return new InputFile(name, () -> new ByteArrayInputStream(bytes));
  }
}
