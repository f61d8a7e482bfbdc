package dev.filmward.simulate;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import dev.filmward.film.Layer;
import dev.filmward.film.Length;
import dev.filmward.film.Sample;
import dev.filmward.simulate.ControlCheck.Twice;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** With -Dfilmward.rewrite=true the files of sample-runs are written anew before they are read. */
class SampleRunsTest {
  private static final Path FOLDER = Path.of("sample-runs");

  static List<SampleRun> runs() {
    return SampleRuns.all();
  }

  @BeforeAll
  static void rewriteWhenAsked() throws IOException {
    if (!Boolean.getBoolean("filmward.rewrite")) {
      return;
    }
    for (SampleRun run : runs()) {
      Files.createDirectories(FOLDER.resolve(run.folder()));
      for (Map.Entry<String, byte[]> file : run.files().entrySet()) {
        Files.write(FOLDER.resolve(run.folder()).resolve(file.getKey()), file.getValue());
      }
    }
  }

  @ParameterizedTest
  @MethodSource("runs")
  void theFilesAreWhatTheStoryGives(SampleRun run) throws IOException {
    for (Map.Entry<String, byte[]> file : run.files().entrySet()) {
      assertThat(FOLDER.resolve(run.folder()).resolve(file.getKey()))
          .hasBinaryContent(file.getValue());
    }
  }

  @Test
  void eachRunHasAFolderAndThereIsNoOther() throws IOException {
    try (var folders = Files.list(FOLDER)) {
      assertThat(folders.filter(Files::isDirectory).map(path -> path.getFileName().toString()))
          .containsExactlyInAnyOrderElementsOf(runs().stream().map(SampleRun::folder).toList());
    }
  }

  /** Limits, zone tests and what raises an alarm are worked out by {@link ControlCheck} alone. */
  @ParameterizedTest
  @MethodSource("runs")
  void theFileRaisesAllAlarmsExpectedAndNoOther(SampleRun run) {
    assertThat(Verdict.complaints(run, ReadBack.of(run).samples())).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("runs")
  void theCountsExpectedAreThoseOfANaiveReader(SampleRun run) throws IOException {
    Counts counts = ReadBack.of(run).counts();
    JsonNode expected = yaml(run, "expected.yaml");
    assertThat(
            new Counts(
                expected.get("rows").asLong(),
                expected.get("readings").asLong(),
                expected.get("missing").asLong(),
                expected.get("quarantined").asLong()))
        .isEqualTo(counts);
    assertThat(counts.rows() * placesPerRow(run))
        .isEqualTo(counts.readings() + counts.missing() + counts.quarantined());
  }

  @ParameterizedTest
  @MethodSource("runs")
  void aStoryHasFourLines(SampleRun run) throws IOException {
    assertThat(Files.readAllLines(FOLDER.resolve(run.folder()).resolve("story.md"))).hasSize(4);
  }

  @ParameterizedTest
  @MethodSource("runs")
  void theStructuresFileSaysWhatTheStructureIs(SampleRun run) throws IOException {
    JsonNode structure = yaml(run, "structures.yaml").get("structures").get(0);
    assertThat(structure.get("code").asText()).isEqualTo(run.structure().code());
    List<Layer> layers = run.structure().layers();
    assertThat(structure.get("layers")).hasSameSizeAs(layers);
    double sumUm = 0;
    for (int i = 0; i < layers.size(); i++) {
      JsonNode layer = structure.get("layers").get(i);
      assertThat(layer.get("name").asText()).isEqualTo(layers.get(i).name());
      double targetUm = Length.parse(layer.get("target").asText()).micrometres();
      assertThat(layers.get(i).individual().target()).hasValue(targetUm);
      sumUm += targetUm;
    }
    assertThat(Length.parse(structure.get("total").get("target").asText()).micrometres())
        .isEqualTo(sumUm);
  }

  @Test
  void twoLinesMakeTwoRunsEachOneAfterTheOtherInNovember() {
    Map<String, List<SampleRun>> byLine =
        runs().stream().collect(Collectors.groupingBy(SampleRun::line));
    assertThat(byLine).containsOnlyKeys("Blown 1", "Blown 2");
    for (List<SampleRun> line : byLine.values()) {
      List<Sample> samples = new ArrayList<>();
      line.forEach(run -> samples.addAll(run.samples()));
      assertThat(line).hasSize(2);
      for (int i = 1; i < samples.size(); i++) {
        assertThat(samples.get(i).takenAt()).isAfter(samples.get(i - 1).takenAt());
        assertThat(samples.get(i).takenAt().toString()).startsWith("2026-11-");
      }
    }
  }

  @ParameterizedTest
  @MethodSource("runs")
  void aRunHasAHundredAndTwentyToTwoHundredWholeSamplesOfFiveLanes(SampleRun run) {
    List<Sample> samples = ReadBack.of(run).samples();
    assertThat(samples).hasSizeBetween(120, 200).hasSameSizeAs(run.samples());
    assertThat(samples.subList(0, 25))
        .allSatisfy(s -> assertThat(s.readings()).isEqualTo(5 * s.layers()));
  }

  @ParameterizedTest
  @MethodSource("runs")
  void theGaugeGoesOnWhereTheFileEnds(SampleRun run) {
    List<Sample> inFile = run.samples();
    SimulatedGauge gauge = run.gauge();
    assertThat(gauge.nextIndex()).isEqualTo(inFile.size());
    Sample last = inFile.get(inFile.size() - 1);
    assertThat(gauge.next().takenAt()).isEqualTo(last.takenAt().plus(Duration.ofMinutes(15)));
  }

  /** Standard error of a mean of 20 samples of 5 readings of 4.8 % each: 0.5 %. */
  @Test
  void afterTheFileTheTieThinsOnUntilTheScreenIsChanged() {
    SimulatedGauge gauge = named("lidding-tie-thinning").gauge();
    double before = 0;
    double after = 0;
    for (int i = 0; i < 40; i++) {
      double sum = Arrays.stream(SeriesOf.layer(gauge.next(), 6)).sum() / 100;
      before += i < 20 ? sum : 0;
      after += i < 20 ? 0 : sum;
    }
    assertThat(before).isBetween(3.06 * 0.83, 3.06 * 0.88);
    assertThat(after).isBetween(3.06 * 0.98, 3.06 * 1.02);
  }

  /** The runs of seven and nine layers need minutes: {@link SeedSearch} finds theirs. */
  @ParameterizedTest
  @ValueSource(strings = {"pouch-haul-off-step", "shrink-in-control"})
  void theSeedIsTheFirstWithWhichChanceRaisesNoAlarm(String folder) {
    SampleRun run = named(folder);
    assertThat(run.withSeed(SeedSearch.firstSeed(run)).samples()).isEqualTo(run.samples());
  }

  /** Two samples later, since a run of eight may go on by chance. */
  @Test
  void thePouchFilmIsBackInControlOnceTheOldSpeedIsSetAgain() {
    SampleRun run = named("pouch-haul-off-step");
    SeriesOf.samples(run.structure(), ReadBack.of(run).samples())
        .forEach(
            (name, subgroups) ->
                assertThat(ControlCheck.findings(subgroups, 0.99, Twice.ANY_TEST))
                    .as(name)
                    .allSatisfy(finding -> assertThat(finding.index()).isLessThan(130)));
  }

  private static SampleRun named(String folder) {
    return runs().stream().filter(run -> run.folder().equals(folder)).findFirst().orElseThrow();
  }

  private static int placesPerRow(SampleRun run) {
    String start = new String(run.files().get("readings.csv"), 0, 300, StandardCharsets.UTF_8);
    return start.contains("thickness_") ? 1 : run.structure().reported().size();
  }

  private static JsonNode yaml(SampleRun run, String file) throws IOException {
    return new YAMLMapper().readTree(run.files().get(file));
  }
}
