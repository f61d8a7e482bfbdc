package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The film check over HTTP, for the small film: 20 um of LDPE over 30 um of mLLDPE. */
class GaugeCheckRoutesTest {
  private static final String CHECK = "/api/v1/gauge/check?frequency=100&structure=DUO-50";
  private static final String WORTH = "/api/v1/gauge/uncertainty?structure=DUO-50";

  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(folder);
    api = served.api();
  }

  @AfterEach
  void stop() {
    served.close();
  }

  /** Densities of the structure, 922 and 915, velocities to start from, 1950 and 2000 m/s. */
  @Test
  void tellsTheEchoesOfTheFilm() {
    JsonNode plan = api.get(CHECK).json();
    JsonNode skin = plan.at("/layers/0");
    assertThat(skin.get("flightNs").asDouble()).isCloseTo(2000 * 20 / 1950.0, within(1e-9));
    assertThat(skin.at("/members/0/velocityOrigin").asText())
        .isEqualTo("starting value, calibrate");
    assertThat(skin.at("/members/0/densityOrigin").asText()).isEqualTo("from the structure");
    double first = 922 * 1950.0;
    double second = 915 * 2000.0;
    assertThat(plan.at("/echoes/1/reflection").asDouble())
        .isCloseTo((second - first) / (second + first), within(1e-12));
    assertThat(plan.at("/echoes/1/sight").asText()).isEqualTo("too weak to see");
    assertThat(plan.at("/proposal/changes").asBoolean()).isTrue();
    assertThat(plan.at("/proposal/reported/0").size()).isEqualTo(2);
    assertThat(plan.get("polarities").asText()).isEqualTo("(+) -");
    assertThat(plan.get("guidance").asText()).contains("not as a promise");
    assertThat(plan.get("structures")).hasSize(1);
  }

  /** 0.3 % of 20 um, a calibrated skin; the seal goes by its family, 1950 to 2150 m/s. */
  @Test
  void tellsTheUncertaintyOfEachLayerAndTheGuardedLimits() {
    JsonNode layers =
        api.get(
                WORTH
                    + "&velocity=0.3,&timing=0.1&shots=4&temperature=0&zero=0&rule=guard-expanded")
            .json()
            .get("layers");
    JsonNode skin = layers.get(0);
    double timing = 0.1 / 2 * 1950 / 2000;
    double combined = Math.sqrt(0.06 * 0.06 + timing * timing);
    assertThat(skin.at("/budget/combinedUm").asDouble()).isCloseTo(combined, within(1e-12));
    assertThat(skin.at("/budget/degrees").isNull()).isTrue();
    assertThat(skin.at("/limits/acceptFrom").asDouble())
        .isCloseTo(17 + 2 * combined, within(1e-12));
    assertThat(skin.at("/limits/acceptUpTo").asDouble())
        .isCloseTo(23 - 2 * combined, within(1e-12));
    assertThat(layers.at("/1/budget/components/0/standard").asDouble())
        .isCloseTo(200 / Math.sqrt(12), within(1e-9));
    assertThat(skin.get("beside").isNull()).isTrue();
  }

  /**
   * Lanes at -0.4, -0.2, 0, 0.2 and 0.4 um differ with a variance of 0.1; means go 0.1 um up and
   * down, so theirs, of 26 samples, is 0.01 x 26 / 25, less than the 0.02 that lanes add: nothing
   * is left between.
   */
  @Test
  void tellsHowMuchOfTheChartedVariationIsTheGauges() {
    api.upload("usual.csv", ServedPlant.FILM.usual(0, 26));
    JsonNode share =
        api.get(WORTH + "&timing=0.1&line=" + Api.encoded(SmallFilm.LINE))
            .json()
            .at("/layers/0/beside");
    double gauge = Math.pow(0.1 * 1950 / 2000, 2);
    assertThat(share.get("ofReadings").asDouble()).isCloseTo(gauge / 0.1, within(1e-6));
    assertThat(share.get("ofMeans").asDouble()).isCloseTo(gauge / 0.1, within(1e-6));
    assertThat(share.get("fits").asBoolean()).isTrue();
    // tolerance 17 to 23 um over six times the root of 0.1, with and without the gauge in it
    assertThat(share.get("observedCp").asDouble())
        .isCloseTo(6 / (6 * Math.sqrt(0.1)), within(1e-6));
    assertThat(share.get("trueCp").asDouble())
        .isCloseTo(6 / (6 * Math.sqrt(0.1 - gauge)), within(1e-6));
    // 3 um off the limit is 9 standard deviations, so nothing is outside, and little is refused
    assertThat(share.at("/risk/consumer").asDouble()).isCloseTo(0, within(1e-12));
    assertThat(share.at("/risk/producer").asDouble()).isBetween(0.0, 0.05);
  }

  @Test
  void whatCannotBeIsRefusedInWords() {
    assertThat(api.get("/api/v1/gauge/check").text()).contains("frequency");
    assertThat(api.get(CHECK + "&couplant=honey").status()).isEqualTo(400);
    assertThat(api.get(CHECK + "&bandwidth=60").text()).contains("0.6 for 60 %");
    assertThat(api.get("/api/v1/gauge/check?frequency=NaN").status()).isEqualTo(400);
    assertThat(api.get("/api/v1/gauge/check?frequency=100&structure=NO").status()).isEqualTo(404);
    assertThat(api.get(WORTH + "&velocity=1,2,3").text()).contains("2 layers, not 3");
    assertThat(api.get(WORTH + "&velocity=NaN,").status()).isEqualTo(400);
    assertThat(api.get(WORTH + "&zero=1e300").text()).contains("so large that nothing");
    assertThat(api.get(WORTH + "&shots=0").text()).contains("1 to a million");
    assertThat(api.get(WORTH + "&rule=mine").text()).contains("guard-95");
  }
}
