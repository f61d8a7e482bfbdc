package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.AuditTable;
import dev.filmward.store.LimitsTable.VersionKey;
import dev.filmward.web.SmallFilm;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Everything that a person changes stands in the audit chain, once; what samples do does not. */
class PlantAuditTest {
  private static final Instant NOW = Instant.parse("2026-11-20T12:00:00Z");
  private static final SmallFilm FILM = SmallFilm.withSampleAt(30, NOW);
  private static final String MADE = SmallFilm.LINE + ", " + SmallFilm.CODE;

  @TempDir private Path folder;

  @Test
  void whatPeopleDoIsKeptInItsOrder() throws Exception {
    try (TestPlant test = new TestPlant(folder, NOW)) {
      Plant plant = test.plant();
      byte[] structures = SmallFilm.STRUCTURES.getBytes(StandardCharsets.UTF_8);
      plant.learnStructures("film.yaml", structures);
      plant.learnStructures("film.yaml", structures);
      test.read("baseline.csv", FILM.usual(0, 25));
      test.freeze(SmallFilm.LINE, SmallFilm.CODE);
      test.read("thin.csv", FILM.thinnerSkin(25, 27, 1));
      plant.acknowledge(1, "Jo");
      plant.alarmDesk().explain(1, new Explanation("other", "hopper low", "filled it", "Sam"));
      plant.moveLimits(
          new VersionKey(SmallFilm.LINE, SmallFilm.CODE, 1),
          new StateChange(LimitsState.SUSPECT, new Decision("Kim", "new resin", NOW)));

      assertThat(entries(plant))
          .containsExactly(
              new AuditEntry(NOW, "not named", "structures", "film.yaml", SmallFilm.STRUCTURES),
              new AuditEntry(NOW, "Kim", "limits", MADE + ", version 1", "frozen: quiet baseline"),
              new AuditEntry(NOW, "Jo", "alarm", "alarm 1, " + MADE, "seen, mine"),
              new AuditEntry(
                  NOW, "Sam", "alarm", "alarm 1, " + MADE, "cause: hopper low; action: filled it"),
              new AuditEntry(NOW, "Kim", "limits", MADE + ", version 1", "suspect: new resin"));
    }
  }

  private static List<AuditEntry> entries(Plant plant) {
    List<AuditTable.Link> newest = plant.store().read(tables -> tables.audit().newest(100));
    List<AuditEntry> oldestFirst = new ArrayList<>();
    newest.forEach(link -> oldestFirst.add(0, link.entry()));
    return oldestFirst;
  }
}
