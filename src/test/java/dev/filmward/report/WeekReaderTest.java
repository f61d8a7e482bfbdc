package dev.filmward.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.film.Characteristic;
import dev.filmward.pipeline.BaselineChoice;
import dev.filmward.pipeline.TestPlant;
import dev.filmward.report.CharacteristicWeek.ChartPoint;
import dev.filmward.report.IndexWeek.Kind;
import dev.filmward.report.IndexWeek.Why;
import dev.filmward.report.WeekReader.Scope;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The figures of a held week of sample data against an independent computation: the file read by
 * hand, moments by Apache Commons Math, indices by the formulas of ISO 22514-2, d2 and d3 from the
 * printed table of ASTM MNL 7, unequal samples weighted after I. W. Burr, Statistical Quality
 * Control Methods (1976).
 */
class WeekReaderTest {
  private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

  /** For samples of 4 and 5: d2 and d3. */
  private static final Map<Long, double[]> PRINTED =
      Map.of(4L, new double[] {2.059, 0.880}, 5L, new double[] {2.326, 0.864});

  @TempDir private Path folder;

  @Test
  void figuresAreThoseOfAnIndependentComputation() throws Exception {
    Path run = Path.of("sample-runs/shrink-in-control");
    WeeklyReport report = reportOf(run, "Blown 2", "SHR-60", "2026-W47");
    FilmWeek film = report.films().get(0);
    CharacteristicWeek skin = film.characteristics().get(0);
    assertThat(skin.name()).isEqualTo("Outer skin");
    Readings readings = Readings.of(run, "Outer skin");

    assertThat(skin.readings()).isEqualTo(readings.all.getN());
    assertThat(skin.samples()).isEqualTo(readings.bySample.size());
    assertThat(value(skin.mean())).isCloseTo(readings.all.getMean(), within(1e-9));
    double sigma = readings.all.getStandardDeviation();
    assertThat(value(skin.sigmaOverall())).isCloseTo(sigma, within(1e-9));
    double within = readings.sigmaWithin();
    // the table has four digits
    assertThat(value(skin.sigmaWithin())).isCloseTo(within, within(3e-4 * within));
    double lower = value(skin.individual().lower());
    double upper = value(skin.individual().upper());
    double mean = readings.all.getMean();
    assertThat(value(skin.index().ppk()))
        .isCloseTo(Math.min(upper - mean, mean - lower) / (3 * sigma), within(1e-9));
    assertThat(value(skin.index().pp())).isCloseTo((upper - lower) / (6 * sigma), within(1e-9));
    assertThat(skin.index().kind()).isEqualTo(Kind.CAPABILITY);
    assertThat(skin.index().why()).isEqualTo(Why.STABLE);
    assertThat(value(skin.index().cp())).isCloseTo((upper - lower) / (6 * within), within(1e-3));
    NormalDistribution fitted = new NormalDistribution(mean, sigma);
    double out = fitted.cumulativeProbability(lower) + 1 - fitted.cumulativeProbability(upper);
    assertThat(value(skin.expectedPpm())).isCloseTo(1e6 * out, within(1e-6));
    assertThat(skin.bins().orElseThrow().counts().stream().mapToLong(Long::longValue).sum())
        .isEqualTo(skin.readings());
    assertThat(skin.trend()).hasSize(13);
    assertThat(skin.trend().get(12).ppk()).isEqualTo(skin.index().ppk());
    assertThat(skin.lanes().stream().mapToLong(CharacteristicWeek.LaneWeek::readings).sum())
        .isEqualTo(skin.readings());
  }

  @Test
  void anUnstableWeekHasPerformanceAndNoCapability() throws Exception {
    WeeklyReport report =
        reportOf(Path.of("sample-runs/lidding-tie-thinning"), "Blown 1", "LID-60", "2026-W47");
    FilmWeek film = report.films().get(0);
    CharacteristicWeek tie = named(film, "Inner tie");
    assertThat(tie.steadiness().stable()).isFalse();
    assertThat(tie.index().kind()).isEqualTo(Kind.PERFORMANCE);
    assertThat(tie.index().why()).isEqualTo(Why.UNSTABLE);
    assertThat(tie.index().cp()).isEmpty();
    assertThat(tie.index().cpk()).isEmpty();
    assertThat(tie.index().ppk()).isPresent();
    assertThat(tie.observedPpm()).isPresent();
    assertThat(tie.expectedPpm()).as("nobody knows what comes next").isEmpty();
    assertThat(film.verdict()).isIn(Verdict.NOT_STABLE, Verdict.BELOW);
    assertThat(film.acts()).extracting(FilmWeek.Act::kind).contains(FilmWeek.Act.Kind.NOT_STABLE);
    assertThat(film.alarms().opened()).isPositive();
    assertThat(tie.chart().stream().filter(point -> !point.signals().isEmpty()))
        .hasSizeGreaterThanOrEqualTo((int) tie.steadiness().signalled());
  }

  @Test
  void sharesAddUpToOneAndHaveNoIndex() throws Exception {
    FilmWeek film =
        reportOf(Path.of("sample-runs/shrink-in-control"), "Blown 2", "SHR-60", "2026-W47")
            .films()
            .get(0);
    double sum =
        film.characteristics().stream()
            .filter(CharacteristicWeek::isShare)
            .mapToDouble(each -> value(each.mean()))
            .sum();
    assertThat(sum).isCloseTo(1, within(1e-9));
    assertThat(film.characteristics().stream().filter(CharacteristicWeek::isShare))
        .allMatch(each -> each.index().kind() == Kind.NONE)
        .allMatch(each -> value(each.sigmaWithin()) > 0)
        .allMatch(each -> value(each.sigmaWithin()) <= 1.05 * value(each.sigmaOverall()));
  }

  /**
   * The run's story: the gauge now and then lost the echo of the core and wrote a dash, and six
   * rows are damaged.
   */
  @Test
  void lostReadingsAreMissingAndNotCalledMisread() throws Exception {
    Path run = Path.of("sample-runs/shrink-in-control");
    long dashed =
        Files.readAllLines(run.resolve("readings.csv")).stream()
            .filter(line -> line.endsWith(",-"))
            .count();
    assertThat(dashed).isPositive();
    FilmWeek film = reportOf(run, "Blown 2", "SHR-60", "2026-W47").films().get(0);
    assertThat(film.samples().missingReadings()).isEqualTo(dashed + 6);
    assertThat(film.gauge().kinds()).containsOnlyKeys("lost-echo");
    assertThat(film.gauge().flagged()).isZero();
    assertThat(film.acts())
        .extracting(FilmWeek.Act::kind)
        .doesNotContain(FilmWeek.Act.Kind.MISREAD);
  }

  @Test
  void withoutLimitsNothingIsCalledCapability() throws Exception {
    try (TestPlant plant = plantOf(Path.of("sample-runs/shrink-in-control"))) {
      FilmWeek film = read(plant, "2026-W47").films().get(0);
      assertThat(film.characteristics()).noneMatch(each -> each.index().kind() == Kind.CAPABILITY);
      assertThat(film.characteristics().get(0).index().why()).isEqualTo(Why.NO_LIMITS);
      assertThat(film.verdict()).isIn(Verdict.NOT_JUDGED, Verdict.BELOW);
    }
  }

  @Test
  void theWeekAfterSaysThatThereAreNoDataAndALaterOneHasNoFilm() throws Exception {
    try (TestPlant plant = plantOf(Path.of("sample-runs/shrink-in-control"))) {
      FilmWeek film = read(plant, "2026-W48").films().get(0);
      assertThat(film.verdict()).isEqualTo(Verdict.NO_DATA);
      assertThat(film.before()).isNotEqualTo(Verdict.NO_DATA);
      assertThat(film.characteristics()).allMatch(each -> each.mean().isEmpty());
      assertThat(read(plant, "2026-W50").films()).isEmpty();
    }
  }

  @Test
  void oneSampleIsTooLittleForAnIndex() throws Exception {
    Path run = Path.of("sample-runs/shrink-in-control");
    List<String> lines = Files.readAllLines(run.resolve("readings.csv"), StandardCharsets.UTF_8);
    String first =
        String.join(
            "\n",
            lines.stream()
                .filter(line -> line.startsWith("taken_at") || line.contains(",S001,"))
                .toList());
    try (TestPlant plant = new TestPlant(folder, Instant.parse("2026-11-23T06:00:00Z"))) {
      plant.plant().learnStructures("s.yaml", Files.readAllBytes(run.resolve("structures.yaml")));
      plant.read("one.csv", first);
      FilmWeek film = read(plant, "2026-W47").films().get(0);
      assertThat(film.verdict()).isEqualTo(Verdict.TOO_LITTLE_DATA);
      assertThat(film.characteristics().get(0).index().kind()).isNotEqualTo(Kind.CAPABILITY);
    }
  }

  /**
   * A layer that was never measured has no figures, and the total neither; the others have theirs.
   */
  @Test
  void aMissingLayerIsMissingAndNotZero() throws Exception {
    Path run = Path.of("sample-runs/shrink-in-control");
    List<String> lines = Files.readAllLines(run.resolve("readings.csv"), StandardCharsets.UTF_8);
    String without =
        String.join("\n", lines.stream().filter(line -> !line.contains(",Core,")).toList());
    try (TestPlant plant = new TestPlant(folder, Instant.parse("2026-11-23T06:00:00Z"))) {
      plant.plant().learnStructures("s.yaml", Files.readAllBytes(run.resolve("structures.yaml")));
      plant.read("without.csv", without);
      FilmWeek film = read(plant, "2026-W47").films().get(0);
      assertThat(named(film, "Core").mean()).isEmpty();
      assertThat(named(film, "Core").index().why()).isEqualTo(Why.NO_DATA);
      assertThat(film.characteristics().get(0).mean()).isPresent();
      assertThat(film.samples().missingReadings()).isPositive();
    }
  }

  /**
   * From sample S100 on there is no core any more: samples from before are counted, and in no
   * figure.
   */
  @Test
  void samplesFromBeforeAStructureChangedAreToldAndNotMixedIn() throws Exception {
    Path run = Path.of("sample-runs/shrink-in-control");
    List<String> lines = Files.readAllLines(run.resolve("readings.csv"), StandardCharsets.UTF_8);
    String before =
        String.join(
            "\n",
            lines.stream()
                .filter(line -> line.startsWith("taken_at") || sample(line) < 100)
                .toList());
    String after =
        String.join(
            "\n",
            lines.stream()
                .filter(line -> line.startsWith("taken_at") || sample(line) >= 100)
                .filter(line -> !line.contains(",Core,"))
                .toList());
    try (TestPlant plant = new TestPlant(folder, Instant.parse("2026-11-23T06:00:00Z"))) {
      plant.plant().learnStructures("s.yaml", Files.readAllBytes(run.resolve("structures.yaml")));
      plant.read("before.csv", before);
      plant.plant().learnStructures("s2.yaml", twoLayers().getBytes(StandardCharsets.UTF_8));
      plant.read("after.csv", after);
      FilmWeek film = read(plant, "2026-W47").films().get(0);
      assertThat(film.samples().structureChanged()).isEqualTo(99);
      assertThat(film.characteristics().get(0).samples()).isEqualTo(film.samples().received() - 99);
      assertThat(film.plies())
          .extracting(FilmWeek.Ply::name)
          .containsExactly("Outer skin", "Inner skin");
    }
  }

  private static String twoLayers() {
    return """
        structures:
          - code: SHR-60
            name: Collation shrink film without a core
            layers:
              - {name: Outer skin, role: skin, target: 18 um, lower: 16.2 um, upper: 19.8 um}
              - {name: Inner skin, role: skin, target: 18 um, lower: 16.2 um, upper: 19.8 um}
        """;
  }

  private static int sample(String line) {
    String[] cells = line.split(",");
    return cells.length > 4 && cells[4].matches("S\\d+")
        ? Integer.parseInt(cells[4].substring(1))
        : 0;
  }

  /**
   * The chart of the week has the limits that held at each sample, and the report says who changed
   * them.
   */
  @Test
  void limitsThatChangedInTheMiddleHoldFromThenOn() throws Exception {
    Path run = Path.of("sample-runs/shrink-in-control");
    List<String> lines = Files.readAllLines(run.resolve("readings.csv"), StandardCharsets.UTF_8);
    String first =
        String.join(
            "\n",
            lines.stream()
                .filter(line -> line.startsWith("taken_at") || sample(line) < 80)
                .toList());
    String rest =
        String.join(
            "\n",
            lines.stream()
                .filter(line -> line.startsWith("taken_at") || sample(line) >= 80)
                .toList());
    try (TestPlant plant = new TestPlant(folder, Instant.parse("2026-11-19T12:00:00Z"))) {
      plant.plant().learnStructures("s.yaml", Files.readAllBytes(run.resolve("structures.yaml")));
      plant.read("first.csv", first);
      plant
          .plant()
          .freezeLimits(
              "Blown 2",
              "SHR-60",
              25,
              new Decision("Kim", "first limits", Instant.parse("2026-11-19T12:00:00Z")));
      plant
          .plant()
          .putInForce(
              "Blown 2",
              "SHR-60",
              BaselineChoice.last(40),
              new StateChange(
                  LimitsState.FROZEN,
                  new Decision("Alex", "new die", Instant.parse("2026-11-19T12:05:00Z"))));
      plant.read("rest.csv", rest);
      FilmWeek film = read(plant, "2026-W47").films().get(0);
      assertThat(film.limits())
          .extracting(FilmWeek.LimitsMove::reason)
          .containsExactly("first limits", "new die");
      List<Double> lower =
          film.characteristics().get(0).chart().stream()
              .filter(point -> point.lower().isPresent())
              .map(point -> point.lower().getAsDouble())
              .distinct()
              .toList();
      // two versions, and samples of four and of five readings
      assertThat(lower).hasSizeGreaterThanOrEqualTo(2);
      ChartPoint last =
          film.characteristics()
              .get(0)
              .chart()
              .get(film.characteristics().get(0).chart().size() - 1);
      assertThat(film.characteristics().get(0).chart().get(0).lower()).isNotEqualTo(last.lower());
    }
  }

  @Test
  void aWeekInWhichTheClockChangesHasAnHourMore() {
    ReportWeek week = ReportWeek.parse("2026-W43", ZONE);
    assertThat(week.monday()).isEqualTo("2026-10-19");
    assertThat(java.time.Duration.between(week.from(), week.to()).toHours()).isEqualTo(169);
    assertThat(week.contains(Instant.parse("2026-10-25T22:59:59Z"))).isTrue();
    assertThat(week.contains(Instant.parse("2026-10-25T23:00:00Z"))).isFalse();
    assertThat(ReportWeek.of(Instant.parse("2026-12-31T12:00:00Z"), ZONE).word())
        .isEqualTo("2026-W53");
  }

  @Test
  void jsonGivesTheReportBackAndTheSameDataTheSameDigest() throws Exception {
    try (TestPlant plant = plantOf(Path.of("sample-runs/shrink-in-control"))) {
      WeeklyReport report = read(plant, "2026-W47");
      byte[] json = ReportJson.write(report);
      WeeklyReport back = ReportJson.read(json);
      assertThat(back).isEqualTo(report);
      assertThat(ReportJson.write(back)).isEqualTo(json);
      assertThat(read(plant, "2026-W47").dataDigest()).isEqualTo(report.dataDigest());
      assertThat(read(plant, "2026-W46").dataDigest()).isNotEqualTo(report.dataDigest());
    }
  }

  @Test
  void theCustomersEditionHasNeitherCostsNorNames() throws Exception {
    WeeklyReport report =
        reportOf(Path.of("sample-runs/shrink-in-control"), "Blown 2", "SHR-60", "2026-W48");
    assertThat(ReportJson.text(report)).contains("Kim").contains("quiet baseline");
    String customer = ReportJson.text(report.forCustomer());
    assertThat(customer).doesNotContain("Kim").doesNotContain("quiet baseline");
    assertThat(report.forCustomer().films())
        .flatExtracting(FilmWeek::characteristics)
        .allMatch(each -> each.giveaway().isEmpty());
  }

  private static CharacteristicWeek named(FilmWeek film, String name) {
    return film.characteristics().stream()
        .filter(each -> each.kind() == Characteristic.Kind.LAYER && each.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private WeeklyReport reportOf(Path run, String line, String structure, String week)
      throws Exception {
    try (TestPlant plant = plantOf(run)) {
      plant.freeze(line, structure);
      return read(plant, week);
    }
  }

  /** The clock stands in the week after, which the limits are decided in. */
  private TestPlant plantOf(Path run) throws Exception {
    TestPlant plant = new TestPlant(folder, Instant.parse("2026-11-23T06:00:00Z"));
    plant.plant().learnStructures("s.yaml", Files.readAllBytes(run.resolve("structures.yaml")));
    plant.read("readings.csv", Files.readString(run.resolve("readings.csv")));
    return plant;
  }

  private static WeeklyReport read(TestPlant plant, String week) {
    return new WeekReader(plant.plant(), "test")
        .read(ReportWeek.parse(week, ZONE), Scope.ALL, ReportSettings.USUAL);
  }

  private static double value(java.util.OptionalDouble value) {
    return value.orElseThrow();
  }

  /** The readings of one layer, read from the file without the program. */
  private record Readings(DescriptiveStatistics all, Map<String, DescriptiveStatistics> bySample) {
    private static Readings of(Path run, String layer) throws Exception {
      DescriptiveStatistics all = new DescriptiveStatistics();
      Map<String, DescriptiveStatistics> bySample = new TreeMap<>();
      for (String line : Files.readAllLines(run.resolve("readings.csv"))) {
        String[] cells = line.split(",");
        if (cells.length == 8 && cells[6].equals(layer) && cells[7].matches("[0-9.]+")) {
          double um = Double.parseDouble(cells[7]);
          all.addValue(um);
          bySample.computeIfAbsent(cells[4], none -> new DescriptiveStatistics()).addValue(um);
        }
      }
      return new Readings(all, bySample);
    }

    private double sigmaWithin() {
      double weights = 0;
      double sum = 0;
      for (DescriptiveStatistics sample : bySample.values()) {
        double[] d = PRINTED.get(sample.getN());
        double weight = d[0] * d[0] / (d[1] * d[1]);
        sum += weight * (sample.getMax() - sample.getMin()) / d[0];
        weights += weight;
      }
      return sum / weights;
    }
  }
}
