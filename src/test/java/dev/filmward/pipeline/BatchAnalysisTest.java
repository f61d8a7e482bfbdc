package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.film.Structures;
import dev.filmward.intake.FileRefused;
import dev.filmward.intake.Mappings;
import dev.filmward.intake.Rejection;
import dev.filmward.pipeline.Analysis.Series;
import dev.filmward.pipeline.BatchAnalysis.InputFile;
import dev.filmward.simulate.SampleRun;
import dev.filmward.simulate.SampleRuns;
import dev.filmward.store.TestDatabase;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

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

  @ParameterizedTest
  @ValueSource(longs = {1, 17, 100, 3001, 50_000})
  void aFileReadInPartsByTwoThreadsGivesTheSameAnalysis(long bytes) throws Exception {
    List<String> rows = new ArrayList<>(lines.subList(1, Math.min(lines.size(), 700)));
    rows.add(40, "no row");
    rows.add(300, rows.get(20).replaceFirst(";[^;]*$", ";x"));
    rows.set(500, "\"" + rows.get(500).replace(";", "\";\"") + "\"");
    assertSameInParts("some rows at fault", rows, bytes);
  }

  @Test
  void samplesThatLieApartAreJoinedWhateverThePartsAre() throws Exception {
    long seed = new Random().nextLong();
    List<String> shuffled = new ArrayList<>(lines.subList(1, 700));
    Collections.shuffle(shuffled, new Random(seed));
    assertSameInParts("seed " + seed, shuffled, 5000);
  }

  @Test
  void aPartWithNothingButRowsAtFaultIsSaidInFull() throws Exception {
    List<String> rows = new ArrayList<>(Collections.nCopies(12_000, "x"));
    rows.addAll(lines.subList(1, 300));
    assertSameInParts("many rows at fault", rows, 20_000);
  }

  private void assertSameInParts(String words, List<String> rows, long bytes) throws Exception {
    Path file = folder.resolve("parts.csv");
    Files.writeString(file, lines.get(0) + "\n" + String.join("\n", rows) + "\n");
    InputFile whole = new InputFile(file.toString(), () -> Files.newInputStream(file));
    List<Rejection> expected = new ArrayList<>();
    List<Rejection> rejected = new ArrayList<>();
    Analysis inOneGo = analysis(PartedFile.Cut.usual(), whole, expected);
    Analysis inParts = analysis(new PartedFile.Cut(bytes, 2), InputFile.at(file), rejected);
    assertThat(inParts).as(words).isEqualTo(inOneGo);
    assertThat(rejected).as(words).isEqualTo(expected);
  }

  private Analysis analysis(PartedFile.Cut cut, InputFile file, List<Rejection> rejections)
      throws IOException, FileRefused {
    Structures known = new Structures(List.of(run.structure()));
    return new BatchAnalysis(
            known, SampleRuns.PLANT_ZONE, AnalysisScope.everything(), Mappings.NONE, cut)
        .analyse(List.of(file), rejections::add);
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
