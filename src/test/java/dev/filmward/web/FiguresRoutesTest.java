package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Figures of alarms over HTTP, for two alarms of one layer 20 samples apart. */
class FiguresRoutesTest {
  private static final String HOURS = "?from=2026-11-20T06:00:00%2B01:00";

  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;

  /** One gross sample 25, one run of small ones; between them the first is over for good. */
  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(folder);
    api = served.api();
    SmallFilm film = SmallFilm.withSampleAt(60, ServedPlant.NOW);
    api.upload("baseline.csv", film.usual(0, 25));
    api.freeze();
    api.upload("gross.csv", film.thinnerSkin(25, 26, 1));
    api.upload("quiet.csv", film.usual(26, 45));
    api.upload("small.csv", film.thinnerSkin(45, 58, 0.35));
    api.upload("end.csv", film.usual(58, 60));
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void ratesAreOfTheAskedTimeAndStandBesideTheTargets() {
    JsonNode told = api.get("/api/v1/alarm-figures" + HOURS).json();
    JsonNode figures = told.get("figures");
    int all = figures.get("announced").asInt() + told.get("historical").asInt();
    assertThat(all).isEqualTo(2);
    assertThat(told.get("days").asDouble()).isCloseTo(7 / 24.0, within(1e-9));
    assertThat(told.get("targets").get("perHour").asDouble()).isEqualTo(6);
    assertThat(figures.get("positions").asInt()).isEqualTo(1);
  }

  @Test
  void settingsThatWouldHaveSparedAlarmsAreToldWithTheirPrice() {
    JsonNode told = api.get("/api/v1/alarm-figures/spared" + HOURS).json();
    JsonNode skin = told.get("topics").get(0);
    assertThat(skin.get("title").asText()).isEqualTo("Skin: thinner than usual");
    JsonNode runs = option(skin, "without-runs");
    assertThat(runs.get("of").asInt()).isEqualTo(2);
    assertThat(runs.get("left").asInt()).isEqualTo(1);
    // Champ and Woodall (1987) print 9.22 means for all four zone tests and 43.89 for the limit
    assertThat(runs.get("samplesNow").asDouble()).isCloseTo(9.22, within(0.01));
    assertThat(runs.get("samplesThen").asDouble()).isCloseTo(43.89, within(0.01));
    JsonNode look = option(skin, "wider-second-look");
    assertThat(look.get("left").asInt()).isEqualTo(1);
    assertThat(look.get("samplesNow").isNull()).isTrue();
  }

  @Test
  void aTimeThatCannotBeIsRefused() {
    assertThat(api.get("/api/v1/alarm-figures?from=yesterday").status()).isEqualTo(400);
    assertThat(api.get("/api/v1/alarm-figures?from=2027-01-01T00:00:00Z").status()).isEqualTo(400);
    assertThat(api.get("/api/v1/alarm-figures?from=2020-01-01T00:00:00Z").text())
        .contains("366 days");
  }

  private static JsonNode option(JsonNode topic, String setting) {
    for (JsonNode option : topic.get("options")) {
      if (option.get("setting").asText().equals(setting)) {
        return option;
      }
    }
    throw new AssertionError("no option " + setting);
  }
}
