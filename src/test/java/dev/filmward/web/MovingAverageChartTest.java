package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The moving average as a series shows it against its recursion, written out: from the centre line
 * on, a fifth of each mean's distance; limits 2.86 standard deviations of it after very many points
 * (J. M. Lucas and M. S. Saccucci, Technometrics 32 (1990) 1).
 */
class MovingAverageChartTest {
  private static final String SERIES =
      "/api/v1/series?line=Blown%201&structure=DUO-50&kind=layer&position=1";
  private static final double LAMBDA = 0.2;
  private static final double LIMIT = 2.86 * Math.sqrt(LAMBDA / (2 - LAMBDA));

  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(folder).withFrozenLimits();
    api = served.api();
  }

  private void shift() {
    api.upload("shift.csv", ServedPlant.FILM.thinnerSkin(25, 60, 0.2));
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void itIsThereOnlyWhereItIsAskedForOrChosen() {
    shift();
    JsonNode without = api.get(SERIES).json();
    assertThat(without.at("/columns").has("average")).isFalse();
    assertThat(without.get("averageIsChosen").asBoolean()).isFalse();
    JsonNode asked = api.get(SERIES + "&average=shown").json();
    assertThat(asked.at("/columns/average")).as(asked.toString()).hasSize(60);
    assertThat(asked.get("averageIsChosen").asBoolean()).isFalse();
    choose();
    JsonNode chosen = api.get(SERIES).json();
    assertThat(chosen.at("/columns/average")).isEqualTo(asked.at("/columns/average"));
    assertThat(chosen.get("averageIsChosen").asBoolean()).isTrue();
    assertThat(api.get(SERIES + "&readings=exported").json().at("/columns").has("average"))
        .isFalse();
    assertThat(api.get(SERIES + "&average=yes").status()).isEqualTo(400);
  }

  @Test
  void itIsTheRecursionAndBeyondItsLimitsWhereTheTestSaysSo() {
    choose();
    shift();
    JsonNode series = api.get(SERIES).json();
    JsonNode columns = series.get("columns");
    List<Integer> beyond = new ArrayList<>();
    double z = 0;
    for (int i = 0; i < 60; i++) {
      double centre = columns.at("/meanCentre/" + i).asDouble();
      double sigma = (columns.at("/meanUpper/" + i).asDouble() - centre) / 3;
      z += LAMBDA * ((columns.at("/mean/" + i).asDouble() - centre) / sigma - z);
      assertThat(columns.at("/average/" + i).asDouble())
          .isCloseTo(centre + z * sigma, within(1e-9));
      assertThat(columns.at("/averageLower/" + i).asDouble())
          .isCloseTo(centre - LIMIT * sigma, within(1e-9));
      assertThat(columns.at("/averageUpper/" + i).asDouble())
          .isCloseTo(centre + LIMIT * sigma, within(1e-9));
      if (Math.abs(z) > LIMIT) {
        beyond.add(i);
      }
    }
    assertThat(beyond).as("the shift is seen").isNotEmpty();
    List<Integer> signalled = new ArrayList<>();
    for (JsonNode signal : series.get("signals")) {
      if (signal.get("chart").asText().equals("ewma")) {
        signalled.add(signal.get("index").asInt());
      }
    }
    assertThat(signalled).isEqualTo(beyond);
  }

  @Test
  void aShorterSpanGoesOnFromWhatWasBeforeIt() {
    shift();
    JsonNode whole = api.get(SERIES + "&average=shown").json().get("columns");
    long from = whole.at("/takenAt/40").asLong();
    JsonNode part = api.get(SERIES + "&average=shown&from=" + from).json().get("columns");
    assertThat(part.get("average")).hasSize(20);
    for (int i = 0; i < 20; i++) {
      assertThat(part.at("/average/" + i).asDouble())
          .isCloseTo(whole.at("/average/" + (i + 40)).asDouble(), within(1e-12));
    }
  }

  private void choose() {
    Answer chosen =
        api.post(
            "/api/v1/tests",
            """
            {"line": "Blown 1", "structure": "DUO-50", "reason": "slow drifts",
             "characteristics": [{"position": 1, "alarming": [],
               "shown": [{"chart": "ewma", "test": "beyond-limit"}]}]}
            """);
    assertThat(chosen.status()).as(chosen.text()).isEqualTo(200);
  }
}
