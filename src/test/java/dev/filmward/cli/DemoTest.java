package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.pipeline.Plant;
import dev.filmward.store.SampleTable.Production;
import dev.filmward.store.Store;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
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
