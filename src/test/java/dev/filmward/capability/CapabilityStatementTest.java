package dev.filmward.capability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.SpecLimits;
import dev.filmward.stats.Moments;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.time.Instant;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class CapabilityStatementTest {
  private static final long SEED = 77;
  private static final int[] LANES = {10, 20, 30};
  private static final SpecLimits POINT = SpecLimits.of(12, 14, 16);
  private static final SpecLimits AVERAGE = SpecLimits.of(13, 14, 15);
  private static final CapabilityQuestion QUESTION = CapabilityQuestion.of(AVERAGE, POINT);
  private static final Stability STABLE = Stability.ofZoneTests(200, 0);
  private static final Stability UNSTABLE = Stability.ofZoneTests(200, 50);

  @Test
  void theThreeAnswersAreOfTheirOwnReadingsAndLimits() {
    double[][] rows = week(200, 0.2, 0.5);
    CapabilityStatement statement = statement(tally(rows), QUESTION, STABLE);
    Moments means = new Moments();
    Moments points = new Moments();
    Moments third = new Moments();
    for (double[] row : rows) {
      means.add(Arrays.stream(row).sum() / 3);
      Arrays.stream(row).forEach(points::add);
      third.add(row[2]);
    }

    assertThat(ppk(statement.averages())).isCloseTo(expected(means, AVERAGE), within(1e-9));
    assertThat(ppk(statement.points())).isCloseTo(expected(points, POINT), within(1e-9));
    assertThat(ppk(statement.worstLane().orElseThrow()))
        .isCloseTo(expected(third, POINT), within(1e-9));
    assertThat(statement.worstLane().orElseThrow().words())
        .startsWith("Worst lane, number 30: Ppk");
  }

  @Test
  void whileUnstableThereIsPerformanceAndNoCapability() {
    CapabilityTally tally = tally(week(200, 0.2, 0));

    assertThat(statement(tally, QUESTION, UNSTABLE).capability()).isEmpty();
    assertThat(statement(tally, QUESTION, UNSTABLE).words().get(0)).contains("only performance");
    assertThat(statement(tally, QUESTION, UNSTABLE).points().indices().cpk()).isPresent();
    assertThat(statement(tally, QUESTION, STABLE).capability().orElseThrow().sigma())
        .isEqualTo(tally.sigmaWithin().getAsDouble());
  }

  @Test
  void whileUnstableNothingIsShown() {
    CapabilityTally tally = tally(week(200, 0.2, 0));

    assertThat(statement(tally, QUESTION, STABLE).points().standing()).isEqualTo(Standing.SHOWN);
    CapabilityStatement unstable = statement(tally, QUESTION, UNSTABLE);
    assertThat(unstable.points().standing()).isEqualTo(Standing.NOT_SHOWN);
    assertThat(unstable.points().words()).contains("the process is not stable");
    assertThat(unstable.worstLane().orElseThrow().standing()).isNotEqualTo(Standing.SHOWN);
  }

  @Test
  void aSpreadThatIsGivenIsTheOneOfCapability() {
    CapabilityQuestion question = QUESTION.withSigmaWithinUm(0.25);
    CapabilityStatement statement = statement(tally(week(200, 0.2, 0)), question, STABLE);

    assertThat(statement.capability().orElseThrow().cp()).hasValue(4 / 1.5);
  }

  @Test
  void aRequirementIsShownOrNotShownOrMissed() {
    CapabilityTally tally = tally(week(200, 0.4, 0));
    double ppk = ppk(statement(tally, QUESTION, STABLE).points());

    assertThat(standing(tally, ppk - 0.3)).isEqualTo(Standing.SHOWN);
    assertThat(standing(tally, ppk - 0.01)).isEqualTo(Standing.NOT_SHOWN);
    assertThat(standing(tally, ppk + 0.01)).isEqualTo(Standing.BELOW);
    assertThat(statement(tally, QUESTION.requiring(ppk - 0.01, 0.95), STABLE).points().words())
        .contains(
            "with 95 % confidence", "Required ", ": not shown, though the estimate is above.");
  }

  /** Three values that are the same in all lanes tell as much as one. */
  @Test
  void lanesThatMoveTogetherDoNotMakeTheIndexSurer() {
    CapabilityTally together = CapabilityTally.ofMoments();
    CapabilityTally alone = CapabilityTally.ofMoments();
    for (double[] row : week(100, 0.4, 0)) {
      together.add(LANES, new double[] {row[0], row[0], row[0]});
      alone.add(new int[] {10}, new double[] {row[0]});
    }

    assertThat(limit(together)).isCloseTo(limit(alone), within(0.01));
    assertThat(statement(together, QUESTION, STABLE).warning())
        .hasValue(SampleSizeWarning.INDICATIVE);
  }

  /**
   * Lognormal of median 10 and log-sigma 0.3, upper limit 26: by mean 10.46 and sigma 3.21 a Ppk of
   * 1.61; by percentiles (26 - 10) / (24.6 - 10) = 1.10.
   */
  @Test
  void skewedPointsAreJudgedByPercentilesToo() {
    CapabilityTally tally = CapabilityTally.keepingReadings();
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < 300; i++) {
      tally.add(new int[] {1}, new double[] {10 * Math.exp(0.3 * random.nextGaussian())});
    }
    OptionalDouble none = OptionalDouble.empty();
    SpecLimits spec = new SpecLimits(none, none, OptionalDouble.of(26));
    CapabilityQuestion question = CapabilityQuestion.of(SpecLimits.NONE, spec);
    CapabilityStatement statement = statement(tally, question, STABLE);

    assertThat(statement.normality().orElseThrow().verdict()).isEqualTo(Normality.NOT_NORMAL);
    assertThat(statement.percentiles().orElseThrow().method())
        .isEqualTo(PercentileMethod.LOGNORMAL);
    assertThat(statement.words()).anyMatch(words -> words.contains("lognormal distribution"));
    assertThat(statement.points().limits().orElseThrow().atLeast()).isGreaterThan(1.33);
    assertThat(statement.points().standing()).isEqualTo(Standing.BELOW);
    assertThat(statement.points().words())
        .endsWith("1.33: below, since the points are not normal and their percentiles say so.");
    assertThat(statement(tally, question.requiring(0.9, 0.95), STABLE).points().standing())
        .isEqualTo(Standing.NOT_SHOWN);
  }

  @Test
  void withoutLimitsNothingIsJudged() {
    CapabilityQuestion question = CapabilityQuestion.of(SpecLimits.NONE, SpecLimits.NONE);
    CapabilityStatement statement = statement(tally(week(100, 0.2, 0)), question, STABLE);

    assertThat(statement.points().standing()).isEqualTo(Standing.NOT_JUDGED);
    assertThat(statement.points().words()).contains("for want of a specification limit");
    assertThat(statement.worstLane()).isEmpty();
  }

  @Test
  void whereNothingWasMeasuredThereIsNoStatement() {
    CapabilityTally tally = CapabilityTally.ofMoments();
    tally.add(LANES, new double[] {Double.NaN, Double.NaN, Double.NaN});

    assertThat(CapabilityStatement.of(tally, QUESTION, STABLE)).isEmpty();
  }

  @Test
  void oneReadingHasNoIndex() {
    CapabilityTally tally = CapabilityTally.keepingReadings();
    tally.add(LANES, new double[] {14, Double.NaN, Double.NaN});

    assertThat(statement(tally, QUESTION, STABLE).points().standing())
        .isEqualTo(Standing.NOT_JUDGED);
    assertThat(statement(tally, QUESTION, STABLE).capability()).isEmpty();
  }

  @Test
  void talliesMergeAndSurviveAStopToTheSameStatement() throws Exception {
    double[][] rows = week(150, 0.3, 0.2);
    CapabilityTally first = tally(Arrays.copyOf(rows, 61));
    CapabilityTally merged = restored(first);
    merged.merge(tally(Arrays.copyOfRange(rows, 61, 150)));
    CapabilityStatement expected = statement(tally(rows), QUESTION, STABLE);
    CapabilityStatement actual = statement(merged, QUESTION, STABLE);

    assertThat(actual.words()).isEqualTo(expected.words());
    assertThat(ppk(actual.points())).isCloseTo(ppk(expected.points()), within(1e-13));
    assertThat(actual.laneShare()).isCloseTo(expected.laneShare(), within(1e-12));
    assertThatThrownBy(() -> merged.merge(CapabilityTally.ofMoments()))
        .hasMessageContaining("keeps its readings");
  }

  /** Lane 2 lacks a layer: its total and share do not exist; 4 of 14 um and 5 of 15 um do. */
  @Test
  void samplesGiveLayersTotalsAndShares() {
    double[][] um = {{4, 4, 5}, {10, Double.NaN, 10}};
    SampleKey key = new SampleKey("L1", "S", "R", "1");
    Sample sample = new Sample(key, Instant.EPOCH, new int[] {1, 2, 3}, um);

    assertThat(LaneValues.of(sample, Characteristic.total())).containsExactly(14, Double.NaN, 15);
    assertThat(LaneValues.of(sample, new Characteristic(Characteristic.Kind.LAYER, 1, "Skin")))
        .containsExactly(4, 4, 5);
    assertThat(LaneValues.of(sample, new Characteristic(Characteristic.Kind.SHARE, 1, "Skin")))
        .containsExactly(4 / 14.0, Double.NaN, 5 / 15.0);
    CapabilityTally tally = CapabilityTally.ofMoments();
    tally.add(sample, Characteristic.total());
    assertThat(tally.parts().readings()).isEqualTo(2);
  }

  /** Lane 30 thicker than the others by {@code last}. */
  private static double[][] week(int samples, double sigma, double last) {
    SplittableRandom random = new SplittableRandom(SEED);
    double[][] rows = new double[samples][];
    for (int i = 0; i < samples; i++) {
      rows[i] =
          new double[] {
            14 + sigma * random.nextGaussian(),
            14 + sigma * random.nextGaussian(),
            14 + last + sigma * random.nextGaussian()
          };
    }
    return rows;
  }

  private static CapabilityTally tally(double[][] rows) {
    CapabilityTally tally = CapabilityTally.keepingReadings();
    for (double[] row : rows) {
      tally.add(LANES, row);
    }
    return tally;
  }

  private static CapabilityTally restored(CapabilityTally tally)
      throws IOException, ClassNotFoundException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
      out.writeObject(tally);
    }
    try (ObjectInputStream in =
        new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
      return (CapabilityTally) in.readObject();
    }
  }

  private static CapabilityStatement statement(
      CapabilityTally tally, CapabilityQuestion question, Stability stability) {
    return CapabilityStatement.of(tally, question, stability).orElseThrow();
  }

  private static Standing standing(CapabilityTally tally, double requirement) {
    return statement(tally, QUESTION.requiring(requirement, 0.95), STABLE).points().standing();
  }

  private static double limit(CapabilityTally tally) {
    return statement(tally, QUESTION, STABLE).points().limits().orElseThrow().atLeast();
  }

  private static double ppk(Answer answer) {
    return answer.indices().cpk().getAsDouble();
  }

  private static double expected(Moments moments, SpecLimits spec) {
    double room =
        Math.min(
            moments.mean() - spec.lower().getAsDouble(),
            spec.upper().getAsDouble() - moments.mean());
    return room / (3 * moments.standardDeviation().getAsDouble());
  }
}
