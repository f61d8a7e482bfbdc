package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.alarm.Alarm;
import dev.filmward.gauge.screen.Misread;
import dev.filmward.gauge.screen.ScreeningState;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.ScreeningDesk.Suspect;
import dev.filmward.store.SampleTable.Production;
import dev.filmward.store.ScreeningTable.Depth;
import dev.filmward.store.ScreeningTable.Question;
import dev.filmward.store.Store;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoTest {
  @TempDir private Path folder;

  @Test
  void aFolderThatWasKeptIsGoneOnWithAndNotLoadedAgain() throws Exception {
    List<Production> made;
    try (Plant plant = open()) {
      load(plant);
      made = made(plant);
    }
    try (Plant plant = open()) {
      load(plant);
      assertThat(made(plant)).isNotEmpty().isEqualTo(made);
    }
  }

  /**
   * Four samples that were measured again are misread, each in its way, and none raises an alarm.
   */
  @Test
  void misreadSamplesAreFoundAndStayOffTheCharts() throws Exception {
    try (Plant plant = open()) {
      load(plant);
      List<Suspect> found =
          plant
              .screening()
              .list(
                  new Question(
                      Optional.of("Blown 2"),
                      Optional.of("SHR-60"),
                      Optional.empty(),
                      List.of(ScreeningState.values()),
                      Depth.WITHOUT_MERE_GAPS,
                      50));
      assertThat(found)
          .filteredOn(each -> each.screened().isOutOfCharts())
          .extracting(each -> each.screened().flags().get(0).kind())
          .containsExactly(
              Misread.RANGE_END, Misread.COUPLANT, Misread.BOUNDARY_NOT_FOUND, Misread.TWO_WALLS);
      assertThat(found.get(3).screened().state()).hasValue(ScreeningState.CONFIRMED);
      List<Alarm> open = plant.store().read(tables -> tables.alarms().open());
      assertThat(open).noneMatch(alarm -> alarm.subject().structure().equals("SHR-60"));
    }
  }

  private Plant open() {
    return new Plant(Store.open(folder), Clock.systemUTC(), ZoneId.of("Europe/Berlin"));
  }

  private static void load(Plant plant) throws Exception {
    new DemoPeople(plant).doors("127.0.0.1");
    new Demo(plant, Duration.ofSeconds(15)).load();
  }

  private static List<Production> made(Plant plant) {
    return plant.store().read(tables -> tables.samples().productions());
  }
}
