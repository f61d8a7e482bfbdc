package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.filmward.stats.Figures;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code analyse}, from a file to JSON, against published figures. */
class AnalysePublishedTest {
  private static final Class<?> CHART = dev.filmward.chart.MeanRangeLimits.class;
  private static final Instant START = Instant.parse("2026-11-02T06:00:00Z");

  @TempDir private Path folder;

  /**
   * D. C. Montgomery, Introduction to Statistical Quality Control, Example 6.1: the book rounds its
   * constants to three digits, hence the tolerance.
   */
  @Test
  void flowWidthLimitsAndCapabilityAreTheBooks() throws IOException {
    JsonNode series = analyse(Figures.rows(CHART, "flow-width-phase1.csv"), 1.0, 1.5, 2.0);
    assertThat(series.get("subgroups").asInt()).isEqualTo(25);
    assertThat(series.get("readings").asInt()).isEqualTo(125);
    close(series.at("/mean"), 1.5056, 5e-5);
    close(series.at("/rangeBar"), 0.32521, 5e-6);
    close(series.at("/sigmaWithin"), 0.1398, 5e-5);
    close(series.at("/xbar/upper"), 1.69325, 2e-4);
    close(series.at("/xbar/lower"), 1.31795, 2e-4);
    close(series.at("/range/upper"), 0.68749, 2e-4);
    assertThat(series.at("/range/lower").asDouble()).isZero();
    close(series.at("/capability/cp"), 1.192, 5e-4);
    assertThat(series.get("signals")).isEmpty();
  }

  /** NIST reference data SILICON.DAT; limits from the range with A2 and D4 of ASTM MNL 7. */
  @Test
  void specimenThicknessHasItsLastDayBeyondBothLimits() throws IOException {
    double[][] days = Figures.rows(CHART, "specimen-thickness.csv");
    JsonNode series = analyse(days, 20, 23, 28);
    double a2 = 0.577;
    double d4 = 2.114;
    double rangeBar = 2.05;
    double centre = 23.726;
    close(series.at("/rangeBar"), rangeBar, 1e-12);
    close(series.at("/mean"), centre, 1e-12);
    close(series.at("/xbar/upper"), centre + a2 * rangeBar, 1e-3);
    close(series.at("/range/upper"), d4 * rangeBar, 2e-3);
    assertThat(signals(series))
        .contains("19 xbar beyond-limit high", "19 range beyond-limit high")
        .noneMatch(signal -> signal.contains("beyond-limit") && !signal.startsWith("19 "));
  }

  /** Burr, Statistical Quality Control Methods (1976): minimum-variance weights; built by hand. */
  @Test
  void unequalSubgroupsAreWeighted() throws IOException {
    double[][] subgroups = {
      {10.1, 9.8, 10.3},
      {10.0, 10.2, 9.9, 10.4, 10.1},
      {9.7, 10.0},
      {10.2, 10.1, 10.0, 9.9},
      {10.5, 10.3, 10.6, 10.2, 10.4},
      {9.9}
    };
    JsonNode series = analyse(subgroups, 9, 10, 11);
    double sum = 30.2 + 50.6 + 19.7 + 40.2 + 52.0 + 9.9;
    close(series.at("/mean"), sum / 20, 1e-12);
    // d2, d3 of n = 3, 5, 2, 4, 5 (ASTM MNL 7 to four digits); ranges 0.5, 0.5, 0.3, 0.3, 0.4
    double[] d2 = {1.6926, 2.3259, 1.1284, 2.0588, 2.3259};
    double[] d3 = {0.8884, 0.8641, 0.8525, 0.8798, 0.8641};
    double[] range = {0.5, 0.5, 0.3, 0.3, 0.4};
    double weighted = 0;
    double weights = 0;
    for (int i = 0; i < range.length; i++) {
      double weight = d2[i] * d2[i] / (d3[i] * d3[i]);
      weighted += weight * range[i] / d2[i];
      weights += weight;
    }
    close(series.at("/sigmaWithin"), weighted / weights, 1e-4);
    assertThat(series.at("/size/min").asInt()).isEqualTo(1);
    assertThat(series.at("/size/max").asInt()).isEqualTo(5);
  }

  @Test
  void constantReadingsHaveNoSpreadAndNoCapability() throws IOException {
    JsonNode series = analyse(new double[][] {{5.5, 5.5}, {5.5, 5.5}, {5.5, 5.5}}, 5, 5.5, 6);
    assertThat(series.get("sigmaWithin").asDouble()).isZero();
    assertThat(series.get("sigmaOverall").asDouble()).isZero();
    assertThat(series.at("/xbar/upper").asDouble()).isEqualTo(5.5);
    assertThat(series.has("capability")).isFalse();
    assertThat(series.get("signals")).isEmpty();
  }

  @Test
  void aSpecificationOnOneSideGivesNoCp() throws IOException {
    JsonNode series = analyse(Figures.rows(CHART, "flow-width-phase1.csv"), 1.0, 1.5, Double.NaN);
    assertThat(series.at("/capability/cp").isMissingNode()).isTrue();
    // Montgomery, Example 6.1: (1.5056 - 1.00) / (3 x 0.1398)
    close(series.at("/capability/cpk"), (1.5056 - 1.0) / (3 * 0.1398), 1e-3);
    assertThat(series.at("/spec/upper").isMissingNode()).isTrue();
  }

  /** 4, 7, 13, 16 added to 1e9 has variance 30 exactly; here it is added to 1e6 um. */
  @Test
  void aLargeCommonPartDoesNotSpoilTheSpread() throws IOException {
    JsonNode series = analyse(new double[][] {{500004, 500007, 500013, 500016}}, 1, 2, 3);
    assertThat(series.get("sigmaOverall").asDouble()).isEqualTo(Math.sqrt(30), within(1e-12));
  }

  /**
   * Montgomery, Example 6.1, phase II: with limits from the first 25 samples, samples 43 and 45 are
   * beyond the upper limit of the mean and no range is beyond its own.
   */
  @Test
  void limitsFromTheFirstSamplesFindTheShiftOfTheLaterOnes() throws IOException {
    List<double[]> all = new ArrayList<>(List.of(Figures.rows(CHART, "flow-width-phase1.csv")));
    all.addAll(List.of(Figures.rows(CHART, "flow-width-phase2.csv")));
    JsonNode series =
        analyse(all.toArray(double[][]::new), 1.0, 1.5, 2.0, "--baseline", "first:25");
    assertThat(series.get("subgroups").asInt()).isEqualTo(45);
    assertThat(series.get("baseline").asInt()).isEqualTo(25);
    close(series.at("/xbar/upper"), 1.69325, 2e-4);
    assertThat(signals(series).stream().filter(signal -> signal.contains("beyond-limit")))
        .containsExactly("42 xbar beyond-limit high", "44 xbar beyond-limit high");
  }

  /**
   * Montgomery, Example 6.1 data; sigma is the root of the pooled variance over c4 with its 100
   * degrees of freedom, c4 = 1 - 1/(4 x 100) to four digits (ASTM MNL 7, c4 about (4n-4)/(4n-3)).
   */
  @Test
  void meansAndDeviationsHaveLimitsFromThePooledDeviation() throws IOException {
    double[][] samples = Figures.rows(CHART, "flow-width-phase1.csv");
    double squares = 0;
    double sum = 0;
    for (double[] sample : samples) {
      double mean = Arrays.stream(sample).average().orElseThrow();
      sum += mean;
      for (double value : sample) {
        squares += (value - mean) * (value - mean);
      }
    }
    double sigma = Math.sqrt(squares / 100) / (1 - 1.0 / 400);
    JsonNode chart = analyse(samples, 1.0, 1.5, 2.0, "--charts", "mean-deviation").at("/charts/0");
    assertThat(chart.get("chart").asText()).isEqualTo("mean-deviation");
    close(chart.at("/mean/upper"), sum / 25 + 3 * sigma / Math.sqrt(5), 2e-5);
    // B6 of n = 5 (ASTM MNL 7): 1.964
    close(chart.at("/deviation/upper"), 1.964 * sigma, 2e-4);
    assertThat(chart.get("signals")).isEmpty();
  }

  /** Six means that rise, each above the last, are a trend (ISO 7870-2), and nothing else here. */
  @Test
  void onlyTheTestsThatAreChosenAreRun() throws IOException {
    List<double[]> samples = new ArrayList<>();
    for (double mean : new double[] {20, 20.1, 20, 19.7, 19.8, 19.9, 20.0, 20.1, 20.2, 20.0}) {
      samples.add(new double[] {mean - 1, mean + 1});
    }
    double[][] all = samples.toArray(double[][]::new);
    assertThat(signals(analyse(all, 10, 20, 30, "--tests", "trend")))
        .containsExactly("8 xbar trend high");
    assertThat(signals(analyse(all, 10, 20, 30))).isEmpty();
  }

  /** The individuals chart of the sample means: the mean moving range over 1.128, three of them. */
  @Test
  void individualsHaveLimitsFromTheMovingRanges() throws IOException {
    double[][] samples = Figures.rows(CHART, "flow-width-phase1.csv");
    double moving = 0;
    double sum = 0;
    double last = Double.NaN;
    for (double[] sample : samples) {
      double mean = Arrays.stream(sample).average().orElseThrow();
      moving += Double.isNaN(last) ? 0 : Math.abs(mean - last);
      sum += mean;
      last = mean;
    }
    JsonNode chart = analyse(samples, 1.0, 1.5, 2.0, "--charts", "individuals").at("/charts/0");
    close(chart.at("/value/upper"), sum / 25 + 3 * moving / 24 / 1.128, 1e-4);
    close(chart.at("/moving-range/upper"), 3.267 * moving / 24, 1e-4);
  }

  /**
   * After a step of one sigma of the mean, the average with weight 0.2 comes to 1 - 0.8^i sigma at
   * the i-th sample and its limit to 2.86 sqrt(0.2 / 1.8) = 0.953: beyond it at the 14th.
   */
  @Test
  void theMovingAverageAndTheSumSeeASmallStepThatIsThereForLong() throws IOException {
    List<double[]> samples = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      samples.add(new double[] {19, 21});
    }
    // range 2: sigma within 2 / 1.128, of the mean 1.2533
    for (int i = 0; i < 30; i++) {
      samples.add(new double[] {19 + 1.2538, 21 + 1.2538});
    }
    JsonNode series =
        analyse(
            samples.toArray(double[][]::new),
            10,
            20,
            30,
            "--charts",
            "ewma,cusum",
            "--baseline",
            "first:60");
    assertThat(series.at("/charts/0/signals/0/index").asInt()).isEqualTo(60 + 13);
    // the sum grows by 1 - 0.5 a sample: beyond 4.77 at the 10th
    assertThat(series.at("/charts/1/signals/0/index").asInt()).isEqualTo(60 + 9);
    assertThat(series.at("/charts/1/signals/0/side").asText()).isEqualTo("high");
  }

  private JsonNode analyse(
      double[][] subgroups, double lower, double target, double upper, String... options)
      throws IOException {
    String above = Double.isNaN(upper) ? "" : "        upper: " + upper + " um\n";
    Files.writeString(
        folder.resolve("structures.yaml"),
        "structures:\n  - code: ONE\n    name: One layer\n    layers:\n      - name: Layer\n"
            + "        role: core\n        target: "
            + target
            + " um\n        lower: "
            + lower
            + " um\n"
            + above);
    Path csv = folder.resolve("readings.csv");
    Files.write(csv, rows(subgroups));
    List<String> words = new ArrayList<>(List.of("analyse", "--format", "json", csv.toString()));
    words.addAll(List.of(options));
    JsonNode answer = new ObjectMapper().readTree(run(words.toArray(String[]::new)));
    assertThat(answer.at("/series/0/characteristic/kind").asText()).isEqualTo("layer");
    return answer.at("/series/0");
  }

  private static List<String> rows(double[][] subgroups) {
    List<String> rows = new ArrayList<>();
    rows.add("taken_at,line,structure,roll,sample,lane,layer,thickness_um");
    for (int i = 0; i < subgroups.length; i++) {
      for (int lane = 1; lane <= subgroups[i].length; lane++) {
        rows.add(
            String.format(
                Locale.ROOT,
                "%s,Line,ONE,R,S%03d,%d,1,%s",
                START.plusSeconds(900L * i),
                i,
                lane,
                subgroups[i][lane - 1]));
      }
    }
    return rows;
  }

  private static List<String> signals(JsonNode series) {
    List<String> words = new ArrayList<>();
    for (JsonNode signal : series.get("signals")) {
      words.add(
          signal.get("index").asText()
              + " "
              + signal.get("chart").asText()
              + " "
              + signal.get("test").asText()
              + " "
              + signal.get("side").asText());
    }
    return words;
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
