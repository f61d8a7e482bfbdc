package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code analyse} says of whole samples: lanes together, layers together, resin. */
class AnalyseFilmTest {
  private static final String THINNING = "sample-runs/lidding-tie-thinning/readings.csv";
  private static final Instant START = Instant.parse("2026-11-02T06:00:00Z");

  @TempDir private Path folder;

  /**
   * Inner tie of the run, limits from 40 samples, by a general-purpose library from the file: level
   * from the moving ranges of sample means, spread from the residual mean square of samples and
   * lanes.
   */
  @Test
  void threeWayLimitsAgreeWithAnotherComputation() throws IOException {
    JsonNode chart = chart(json("--charts", "three-way", THINNING), "Inner tie", "three-way");
    close(chart.at("/level/lower"), 2.8471189639304963, 1e-9);
    close(chart.at("/level/upper"), 3.269781036069504, 1e-9);
    close(chart.at("/jump/upper"), 0.2596474089690938, 1e-9);
    close(chart.at("/within/upper"), 0.3139985915421952, 1e-9);
    List<Integer> levels = indices(chart, "level");
    assertThat(levels).hasSize(52).startsWith(84, 86, 90);
  }

  /**
   * The whole run by a general-purpose library, from the total and the logarithms of six layers to
   * the seventh: limits by the beta and the F distribution, 32 samples beyond. What is behind them
   * is the layer that the story thins.
   */
  @Test
  void allLayersTogetherShowTheTieThatThins() throws IOException {
    JsonNode chart = chart(json("--charts", "t-squared", THINNING), "Total", "t-squared");
    close(chart.at("/distance/upper"), 17.907794393729937, 1e-8);
    close(chart.at("/distance-later/upper"), 34.227778112757754, 1e-8);
    assertThat(indices(chart, "distance")).isEmpty();
    assertThat(indices(chart, "distance-later")).hasSize(32).startsWith(98, 100, 106, 117, 120);
    assertThat(chart.get("signals"))
        .filteredOn(signal -> signal.get("behind").toString().contains("Inner tie"))
        .hasSizeGreaterThanOrEqualTo(31);
  }

  @Test
  void limitsOfOtherChartsAreColumnsOfTheTable() {
    String[] lines =
        run("analyse", "--format", "csv", "--charts", "three-way,t-squared", THINNING).split("\n");
    assertThat(lines[0])
        .contains("three-way level UCL", "three-way within signals", "t-squared distance UCL");
    assertThat(lines).hasSize(9);
  }

  /** A line is named by whoever makes the file; a spreadsheet must not run it. */
  @Test
  void aNameInTheTableIsNoFormula() throws IOException {
    write(List.of(new double[] {20, 20}, new double[] {20, 20}));
    Path csv = folder.resolve("readings.csv");
    Files.writeString(csv, Files.readString(csv).replace(",Line,", ",=HYPERLINK(1),"));
    String[] lines = run("analyse", "--format", "csv", csv.toString()).split("\n");
    assertThat(lines).hasSize(1 + 3);
    for (int i = 1; i < lines.length; i++) {
      assertThat(lines[i]).startsWith("'=HYPERLINK(1),TWO,");
    }
  }

  @Test
  void layersThatMoveTogetherAreTold() throws IOException {
    JsonNode film = json("--detail", THINNING).at("/correlations/0");
    assertThat(film.get("samples").asInt()).isEqualTo(160);
    assertThat(film.get("pairs")).hasSize(21);
    JsonNode skins = film.at("/pairs/5");
    assertThat(skins.get("second").asText()).isEqualTo("Seal");
    close(skins.at("/thickness/r"), 0.3178416021827641, 1e-9);
    close(skins.at("/thickness/lower"), 0.1711218874264868, 1e-9);
    close(skins.at("/share/r"), -0.23745478109463883, 1e-9);
    close(skins.at("/logRatio/upper"), 0.6636155545304606, 1e-9);
    assertThat(film.get("words").toString()).contains("Shares add up to one");
  }

  /** Two layers of one extruder's melt, of which the second gets what the first loses. */
  @Test
  void aTradeBetweenLayersIsSaidInPlainWords() throws IOException {
    Random random = new Random(8);
    List<double[]> layers = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      double given = random.nextGaussian();
      layers.add(new double[] {20 + given, 20 - given});
    }
    assertThat(text(layers, "--detail"))
        .contains("Outer and Inner trade thickness at constant total", "does not repeat");
  }

  /** Neighbours with a lag-1 autocorrelation of 0.8: 179 of 1000 points outside for nothing. */
  @Test
  void neighboursThatAreAlikeAreToldWithTheChartThatHelps() throws IOException {
    Random random = new Random(3);
    List<double[]> layers = new ArrayList<>();
    double level = 0;
    for (int i = 0; i < 300; i++) {
      level = 0.8 * level + 0.3 * random.nextGaussian();
      layers.add(new double[] {20 + level, 20 + random.nextGaussian()});
    }
    String words = text(layers, "--detail", "--charts", "residual");
    assertThat(words).contains("The limits are too narrow", "Draw them with --charts residual.");
    assertThat(words).contains("residual chart: ");
  }

  /**
   * Thickness 20 um, sigma 0.1, specification from 15: 5 - 3 * 1.33 * sigma is too much. At 0.92
   * g/cm3, 1.5 m and 40 m/min that is um * 0.92 * 1.5 * 40 * 60 / 1000 kg/h.
   */
  @Test
  void giveawayIsToldInGramsKilogramsAndMoney() throws IOException {
    Random random = new Random(12);
    List<double[]> layers = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      layers.add(new double[] {20 + 0.05 * random.nextGaussian(), 20 + random.nextGaussian()});
    }
    write(layers);
    JsonNode giveaway =
        new ObjectMapper()
            .readTree(
                run(
                    "analyse",
                    "--detail",
                    "--format",
                    "json",
                    "--width",
                    "1.5",
                    "--speed",
                    "40",
                    "--price",
                    "2",
                    "--hours",
                    "100",
                    folder.resolve("readings.csv").toString()))
            .at("/series/0/giveaway");
    double um = giveaway.get("achievableUm").asDouble();
    assertThat(um).isBetween(4.2, 4.8);
    close(giveaway.get("gPerM2"), 0.92 * um, 1e-9);
    close(giveaway.get("kgPerHour"), um * 0.92 * 1.5 * 40 * 60 / 1000, 1e-9);
    close(giveaway.get("moneyPerWeek"), um * 0.92 * 1.5 * 40 * 60 / 1000 * 200, 1e-6);
    assertThat(giveaway.has("nominalUm")).as("no least mean is agreed").isFalse();
  }

  @Test
  void ofTwoSamplesNobodyIsToldToTakeResinOut() throws IOException {
    assertThat(text(List.of(new double[] {20, 20}, new double[] {20, 20}), "--detail"))
        .doesNotContain("Giveaway");
  }

  @Test
  void halfAnOutputIsRefused() {
    assertThat(Main.run("analyse", "--width", "1.5", THINNING)).isEqualTo(2);
    assertThat(Main.run("analyse", "--price", "-1", THINNING)).isEqualTo(2);
  }

  private String text(List<double[]> layers, String... options) throws IOException {
    write(layers);
    List<String> words = new ArrayList<>(List.of("analyse"));
    words.addAll(List.of(options));
    words.add(folder.resolve("readings.csv").toString());
    return run(words.toArray(String[]::new));
  }

  /** Layer means of samples; five lanes scatter about them by 0.1 um. */
  private void write(List<double[]> layers) throws IOException {
    Files.writeString(
        folder.resolve("structures.yaml"),
        "structures:\n  - code: TWO\n    name: Two layers\n    layers:\n"
            + layer("Outer")
            + layer("Inner"));
    Random random = new Random(1);
    List<String> rows = new ArrayList<>();
    rows.add("taken_at,line,structure,roll,sample,lane,layer_1_um,layer_2_um");
    for (int i = 0; i < layers.size(); i++) {
      for (int lane = 1; lane <= 5; lane++) {
        rows.add(
            String.format(
                Locale.ROOT,
                "%s,Line,TWO,R,S%03d,%d,%.4f,%.4f",
                START.plusSeconds(900L * i),
                i,
                lane,
                layers.get(i)[0] + 0.1 * random.nextGaussian(),
                layers.get(i)[1] + 0.1 * random.nextGaussian()));
      }
    }
    Files.write(folder.resolve("readings.csv"), rows);
  }

  private static String layer(String name) {
    return "      - name: "
        + name
        + "\n        role: skin\n        target: 20 um\n        lower: 15 um\n        upper: 25 um\n"
        + "        density: 0.92\n";
  }

  private static JsonNode json(String... options) throws IOException {
    List<String> words =
        new ArrayList<>(List.of("analyse", "--format", "json", "--zone", "Europe/Berlin"));
    words.addAll(List.of(options));
    if (!words.contains("--detail")) {
      words.addAll(List.of("--baseline", "first:40"));
    }
    return new ObjectMapper().readTree(run(words.toArray(String[]::new)));
  }

  private static JsonNode chart(JsonNode answer, String characteristic, String chart) {
    JsonNode series =
        StreamSupport.stream(answer.get("series").spliterator(), false)
            .filter(each -> each.at("/characteristic/name").asText().equals(characteristic))
            .findFirst()
            .orElseThrow();
    return StreamSupport.stream(series.get("charts").spliterator(), false)
        .filter(each -> each.get("chart").asText().equals(chart))
        .findFirst()
        .orElseThrow();
  }

  private static List<Integer> indices(JsonNode chart, String part) {
    List<Integer> indices = new ArrayList<>();
    for (JsonNode signal : chart.get("signals")) {
      if (signal.get("part").asText().equals(part)) {
        indices.add(signal.get("index").asInt());
      }
    }
    return indices;
  }

  private static void close(JsonNode actual, double expected, double tolerance) {
    assertThat(actual.asDouble()).isEqualTo(expected, within(tolerance));
  }

  private static String run(String... args) {
    PrintStream before = System.out;
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    System.setOut(new PrintStream(out, true, StandardCharsets.UTF_8));
    try {
      assertThat(Main.run(args)).isZero();
    } finally {
      System.setOut(before);
    }
    return out.toString(StandardCharsets.UTF_8);
  }
}
