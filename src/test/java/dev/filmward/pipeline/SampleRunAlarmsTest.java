package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import dev.filmward.alarm.Alarm;
import dev.filmward.film.Characteristic;
import dev.filmward.store.FileEntry;
import dev.filmward.store.TestDatabase;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The files in sample-runs raise the alarms that their stories say, all and only, and every one of
 * their readings is accounted for. What must be raised was laid down with the story, not read off
 * this program.
 */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class SampleRunAlarmsTest {
  @Parameter private TestDatabase database;

  private static final Path RUNS = Path.of("sample-runs");
  private static final Map<String, String> SIDES =
      Map.of("low", "THINNER", "high", "THICKER", "spread", "SPREAD");

  @TempDir private Path folder;

  static List<Path> runs() throws Exception {
    try (var folders = Files.list(RUNS)) {
      return folders.filter(Files::isDirectory).sorted().toList();
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("runs")
  void raisesWhatItsStorySays(Path run) throws Exception {
    JsonNode story = new YAMLMapper().readTree(run.resolve("expected.yaml").toFile());
    try (TestPlant plant = new TestPlant(database, folder, Instant.parse("2026-11-21T00:00:00Z"))) {
      plant
          .plant()
          .learnStructures("structures.yaml", Files.readAllBytes(run.resolve("structures.yaml")));
      FileEntry file = plant.read("readings.csv", Files.readAllBytes(run.resolve("readings.csv")));
      assertThat(file.refusal()).isEmpty();
      assertThat(file.counts().rows()).isEqualTo(story.get("rows").asLong());
      assertThat(file.counts().readings()).isEqualTo(story.get("readings").asLong());
      assertThat(file.counts().missing()).isEqualTo(story.get("missing").asLong());
      assertThat(file.counts().quarantined()).isEqualTo(story.get("quarantined").asLong());
      var made =
          plant.plant().store().read(tables -> tables.samples().productions()).iterator().next();
      plant.freeze(made.line(), made.structure());
      List<Alarm> alarms = plant.plant().store().read(tables -> tables.alarms().newest(100));
      compare(alarms, story.get("alarms"));
    }
  }

  private static void compare(List<Alarm> raised, JsonNode expected) {
    List<Alarm> rest = new ArrayList<>(raised);
    for (JsonNode each : expected) {
      List<Alarm> fitting = raised.stream().filter(alarm -> fits(alarm, each)).toList();
      assertThat(fitting).as("alarms that fit %s among %s", each, raised).isNotEmpty();
      rest.removeAll(fitting);
    }
    assertThat(rest).as("alarms that no story tells of").isEmpty();
    assertThat(raised).as("one excursion is one alarm").hasSize(expected.size());
  }

  private static boolean fits(Alarm alarm, JsonNode expected) {
    Set<String> named = new TreeSet<>();
    expected.get("layers").forEach(layer -> named.add(layer.asText()));
    Set<String> members =
        alarm.subject().members().stream()
            .map(Characteristic::name)
            .collect(Collectors.toCollection(TreeSet::new));
    String opened = alarm.excursion().course().first().sample();
    String side = expected.get("side").asText().toLowerCase(Locale.ROOT);
    return alarm.subject().deviation().name().equals(SIDES.get(side))
        && named.containsAll(members)
        && alarm.subject().line().equals(expected.get("line").asText())
        && opened.compareTo(expected.get("firstSampleFrom").asText()) >= 0
        && opened.compareTo(expected.get("firstSampleTo").asText()) <= 0;
  }
}
