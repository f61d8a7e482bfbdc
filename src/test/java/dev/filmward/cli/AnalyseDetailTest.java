package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The closer look of {@code analyse}, on runs whose true story is known. */
class AnalyseDetailTest {
  private static final Pattern DRIFT =
      Pattern.compile("drifting since about (\\S+ \\S+) \\(95 %: (\\S+ \\S+) to (\\S+ \\S+)\\)");

  /** From sample S051 on, at 18:30 on 18 November, the inner tie thins; nothing else moves. */
  @Test
  void findsTheLayerThatDriftsAndWhenItBegan() throws IOException {
    JsonNode answer = analyse("sample-runs/lidding-tie-thinning/readings.csv");
    LocalDateTime truth = LocalDateTime.parse("2026-11-18T18:30");
    List<String> drifting = new ArrayList<>();
    for (JsonNode series : answer.get("series")) {
      String sentences = series.get("detail").toString();
      Matcher drift = DRIFT.matcher(sentences);
      if (drift.find()) {
        drifting.add(series.at("/characteristic/name").asText());
        assertThat(truth).isBetween(time(drift.group(2)), time(drift.group(3)));
        assertThat(sentences).contains("The process is not stable", "lower specification limit");
      }
    }
    assertThat(drifting).containsExactly("Inner tie");
  }

  @Test
  void announcesNothingOnARunInControl() throws IOException {
    JsonNode answer = analyse("sample-runs/shrink-in-control/readings.csv");
    assertThat(answer.get("series"))
        .allSatisfy(
            series ->
                assertThat(series.get("detail").toString())
                    .contains("No drift stands out", "The process is stable"));
  }

  /** From sample S081 on one lane is off: ranges signal, means do not, and nothing is shown. */
  @Test
  void aLaneThatIsOffMakesTheProcessUnstable() throws IOException {
    JsonNode answer = analyse("sample-runs/nine-layer-lane-off/readings.csv");
    for (JsonNode series : answer.get("series")) {
      assertThat(series.get("detail").toString())
          .contains("The process is not stable", "Worst lane, number 4")
          .doesNotContain(": shown")
          .doesNotContain("drifting since");
    }
  }

  /**
   * Four charts of means, 91.75 samples each to a false signal (Champ and Woodall 1987), and four
   * of ranges of five, about 217 each (1 / 0.0046, table of ARLs of the range chart): about 16
   * samples.
   */
  @Test
  void namesThePriceOfTheTests() throws IOException {
    JsonNode price = analyse("sample-runs/shrink-in-control/readings.csv").at("/prices/0");
    assertThat(price.get("characteristics").asInt()).isEqualTo(4);
    assertThat(price.get("intervalSeconds").asInt()).isEqualTo(900);
    double rate = 4 / 91.75 + 4 * 0.0046;
    assertThat(price.get("samplesToFalseAlarm").asDouble()).isBetween(0.9 / rate, 1.15 / rate);
    double perShift = 32 / price.get("samplesToFalseAlarm").asDouble();
    assertThat(price.get("falseAlarmsPerShift").asDouble()).isCloseTo(perShift, within(1e-9));
    assertThat(price.get("changes").size()).isEqualTo(9);
  }

  private static LocalDateTime time(String words) {
    return LocalDateTime.parse(words.replace(' ', 'T'));
  }

  private static JsonNode analyse(String file) throws IOException {
    PrintStream before = System.out;
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    System.setOut(new PrintStream(out, true, StandardCharsets.UTF_8));
    try {
      int status =
          Main.run(
              "analyse",
              "--detail",
              "--format",
              "json",
              "--zone",
              "Europe/Berlin",
              "--baseline",
              "first:25",
              file);
      assertThat(status).isZero();
    } finally {
      System.setOut(before);
    }
    return new ObjectMapper().readTree(out.toByteArray());
  }
}
