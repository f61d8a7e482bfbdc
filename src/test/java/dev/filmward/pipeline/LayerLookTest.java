package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.chart.Band;
import dev.filmward.drift.Change;
import dev.filmward.drift.Forecast;
import dev.filmward.drift.MeanSeries;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.SpecLimits;
import dev.filmward.pipeline.LayerLook.Limit;
import dev.filmward.pipeline.LayerLook.Meeting;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Lanes, distribution and movement of a layer against arithmetic that is written out. */
class LayerLookTest {
  private static final Instant START = Instant.parse("2026-11-23T06:00:00Z");
  private static final Characteristic TOTAL = Characteristic.total();

  @Test
  void columnsHoldTheMeansOfTheirLanesAndGapsStayGaps() {
    LaneGrid grid = new LaneGrid(TOTAL, 2);
    grid.add(sample(0, new int[] {1, 2}, 10, 20));
    grid.add(sample(1, new int[] {1, 2}, 12, Double.NaN));
    grid.add(sample(2, new int[] {2, 4}, 21, 30));
    LayerLook.Lanes lanes = grid.lanes();
    assertThat(lanes.lanes()).containsExactly(1, 2, 4);
    assertThat(lanes.columns()).hasSize(2);
    assertThat(lanes.columns().get(0).means())
        .containsExactly(Optional.of((10 + 12) / 2.0), Optional.of(20.0), Optional.empty());
    assertThat(lanes.columns().get(1).means())
        .containsExactly(Optional.empty(), Optional.of(21.0), Optional.of(30.0));
    assertThat(lanes.columns().get(0).to()).isEqualTo(at(1));
    assertThat(lanes.columns().get(1).from()).isEqualTo(at(2));
  }

  @Test
  void everyReadingIsInOneBinAndThoseOutsideAreCounted() {
    SpecLimits spec =
        new SpecLimits(OptionalDouble.of(19.5), OptionalDouble.empty(), OptionalDouble.empty());
    ReadingSpread spread = new ReadingSpread(TOTAL, asked(spec));
    Random random = new Random(7);
    double[] readings = random.doubles(1200, 19, 21).toArray();
    for (int i = 0; i < readings.length; i += 4) {
      spread.add(sample(i, new int[] {1, 2, 3, 4}, Arrays.copyOfRange(readings, i, i + 4)));
    }
    LayerLook.Spread found = spread.spread().orElseThrow();
    assertThat(found.readings()).isEqualTo(1200);
    assertThat(found.counts().stream().mapToLong(Long::longValue).sum()).isEqualTo(1200);
    long expected = Arrays.stream(readings).filter(x -> x < 19.5).count();
    assertThat(found.outside())
        .isEqualTo(new LayerLook.Outside(Optional.of(expected), Optional.empty()));
    double least = Arrays.stream(readings).min().orElseThrow();
    long inSecond =
        Arrays.stream(readings)
            .filter(x -> x >= least + found.width() && x < least + 2 * found.width())
            .count();
    assertThat(found.counts().get(1)).isEqualTo(inSecond);
    assertThat(found.mean())
        .isCloseTo(Arrays.stream(readings).average().orElseThrow(), within(1e-12));
    // a uniform distribution of 19 to 21: median 20, sigma 2 / sqrt(12)
    assertThat(found.tails().get(1)).isCloseTo(20, within(0.06));
    assertThat(found.sigma()).isCloseTo(2 / Math.sqrt(12), within(0.02));
    assertThat(found.normality().verdict().name()).isEqualTo("NOT_NORMAL");
  }

  private static SpecTimes asked(SpecLimits individual) {
    return new SpecTimes(
        List.of(new SpecTimes.Spec(Optional.empty(), individual, SpecLimits.NONE)));
  }

  private static SpecTimes.Spec since(Optional<Instant> from, double lower) {
    SpecLimits individual =
        new SpecLimits(OptionalDouble.of(lower), OptionalDouble.empty(), OptionalDouble.empty());
    return new SpecTimes.Spec(from, individual, SpecLimits.NONE);
  }

  @Test
  void readingsAreOutsideByWhatWasAskedWhenTheyWereMade() {
    SpecTimes asked =
        new SpecTimes(List.of(since(Optional.empty(), 10), since(Optional.of(at(3)), 12)));
    ReadingSpread spread = new ReadingSpread(TOTAL, asked);
    for (int i = 0; i < 6; i++) {
      spread.add(sample(i, new int[] {1, 2, 3}, 9.5, 11, 13));
    }
    // 9.5 alone in the first three, 9.5 and 11 in the others
    assertThat(spread.spread().orElseThrow().outside())
        .isEqualTo(new LayerLook.Outside(Optional.of(3L + 6L), Optional.empty()));
  }

  @Test
  void ofVeryManyReadingsTheNewestAreCountedByTheirOwnTime() {
    SpecTimes asked =
        new SpecTimes(List.of(since(Optional.empty(), 10), since(Optional.of(at(3)), 12)));
    ReadingSpread spread = new ReadingSpread(TOTAL, asked);
    int[] lanes = IntStream.rangeClosed(1, ReadingSpread.MOST / 4).toArray();
    double[] readings = new double[lanes.length];
    Arrays.fill(readings, 11);
    for (int i = 0; i < 5; i++) {
      spread.add(sample(i, lanes, readings));
    }
    LayerLook.Spread found = spread.spread().orElseThrow();
    assertThat(found.readings()).isEqualTo(ReadingSpread.MOST);
    // samples 1 to 4 are kept; those at 3 and 4 are below 12
    assertThat(found.outside().below()).hasValue(2L * lanes.length);
  }

  @Test
  void equalReadingsAreOneBinAndNoneIsNoDistribution() {
    ReadingSpread spread = new ReadingSpread(TOTAL, SpecTimes.none());
    assertThat(spread.spread()).isEmpty();
    spread.add(sample(0, new int[] {1, 2}, 5, 5));
    LayerLook.Spread found = spread.spread().orElseThrow();
    assertThat(found.counts()).containsExactly(2L);
    assertThat(found.sigma()).isZero();
  }

  /** One um an hour from 20 um at 06:00, with noise of 0.02: it meets 25 um five hours later. */
  @Test
  void aRampIsDrawnAndMeetsItsLimitWhereArithmeticSaysSo() {
    MeanSeries means = new MeanSeries(MovementLook.MEANS);
    Random random = new Random(11);
    for (int i = 0; i < 120; i++) {
      double level = 20 + Math.max(0, i - 60) / 60.0;
      means.add(START.plus(Duration.ofMinutes(i)), level + 0.02 * random.nextGaussian());
    }
    LayerLook.Movement movement =
        new MovementLook(means)
            .movement(
                Optional.of(new Band(19, 20, 21.5)),
                new SpecLimits(
                    OptionalDouble.of(15), OptionalDouble.of(20), OptionalDouble.of(25)));
    assertThat(movement.change().orElseThrow().kind()).isEqualTo(Change.Kind.RAMP);
    assertThat(movement.line()).hasSize(3);
    assertThat(movement.line().get(0).um()).isCloseTo(20, within(0.02));
    assertThat(movement.line().get(2).um()).isCloseTo(20 + 59 / 60.0, within(0.03));
    Meeting specification = meeting(movement, Limit.UPPER_SPECIFICATION);
    Instant expected = START.plus(Duration.ofMinutes(60 + 5 * 60));
    assertThat(Duration.between(specification.forecast().expected().orElseThrow(), expected).abs())
        .isLessThan(Duration.ofMinutes(10));
    assertThat(meeting(movement, Limit.LOWER_CONTROL).forecast().verdict())
        .isEqualTo(Forecast.Verdict.NOT_WITHIN_HORIZON);
  }

  @Test
  void aStepHasTwoLevelsAndLeadsNowhere() {
    MeanSeries means = new MeanSeries(MovementLook.MEANS);
    Random random = new Random(3);
    for (int i = 0; i < 100; i++) {
      means.add(
          START.plus(Duration.ofMinutes(i)), (i < 70 ? 20 : 20.5) + 0.05 * random.nextGaussian());
    }
    LayerLook.Movement movement =
        new MovementLook(means).movement(Optional.empty(), SpecLimits.NONE);
    assertThat(movement.change().orElseThrow().at()).isEqualTo(START.plus(Duration.ofMinutes(70)));
    assertThat(movement.line())
        .extracting(point -> Math.round(10 * point.um()) / 10.0)
        .containsExactly(20.0, 20.0, 20.5, 20.5);
    assertThat(movement.meetings()).isEmpty();
  }

  @Test
  void fewMeansSayNothing() {
    MeanSeries means = new MeanSeries(MovementLook.MEANS);
    means.add(START, 20);
    LayerLook.Movement movement =
        new MovementLook(means).movement(Optional.empty(), SpecLimits.NONE);
    assertThat(movement.change()).isEmpty();
    assertThat(movement.line()).isEmpty();
    assertThat(movement.slope()).isEmpty();
  }

  private static Meeting meeting(LayerLook.Movement movement, Limit limit) {
    return movement.meetings().stream()
        .filter(meeting -> meeting.limit() == limit)
        .findFirst()
        .orElseThrow();
  }

  private static Sample sample(int minute, int[] lanes, double... readings) {
    SampleKey key = new SampleKey("Blown 1", "MONO-20", "R1", "S" + minute);
    return new Sample(key, at(minute), lanes, new double[][] {readings});
  }

  private static Instant at(int minute) {
    return START.plus(Duration.ofMinutes(minute));
  }
}
