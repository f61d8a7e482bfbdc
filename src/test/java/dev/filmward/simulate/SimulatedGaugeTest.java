package dev.filmward.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.simulate.FilmModel.Stability;
import java.time.Instant;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Bounds are four standard errors of what is estimated, from the textbook formula named. */
class SimulatedGaugeTest {
  private static final int COUNT = 20_000;
  private static final List<Sample> MANY = TwoLayers.story().samples(COUNT);

  @Test
  void theSameStoryGivesTheSameSamples() {
    assertThat(TwoLayers.story().samples(50)).isEqualTo(TwoLayers.story().samples(50));
  }

  @Test
  void anotherSeedGivesOtherSamples() {
    assertThat(TwoLayers.story().withSeed(12).samples(1))
        .isNotEqualTo(TwoLayers.story().samples(1));
  }

  @Test
  void aGaugeStartedLaterGivesWhatOneRunFromTheBeginningGives() {
    for (int start : new int[] {0, 1, 7, 49}) {
      SimulatedGauge gauge = SimulatedGauge.startingAt(TwoLayers.story(), start);
      assertThat(gauge.nextIndex()).isEqualTo(start);
      assertThat(gauge.next()).isEqualTo(MANY.get(start));
      assertThat(gauge.next()).isEqualTo(MANY.get(start + 1));
    }
  }

  @Test
  void samplesAreTenMinutesApartAndARollHasFour() {
    assertThat(MANY.get(0).key()).isEqualTo(new SampleKey("Cast 7", "TWO-50", "R01", "S001"));
    assertThat(MANY.get(3).key()).isEqualTo(new SampleKey("Cast 7", "TWO-50", "R01", "S004"));
    assertThat(MANY.get(4).key()).isEqualTo(new SampleKey("Cast 7", "TWO-50", "R02", "S005"));
    assertThat(MANY.get(4).takenAt()).isEqualTo(Instant.parse("2026-11-02T07:40:00Z"));
  }

  @Test
  void everyLayerIsReadInEveryLane() {
    Sample sample = MANY.get(0);
    assertThat(sample.layers()).isEqualTo(2);
    assertThat(new int[] {sample.lane(0), sample.lane(1), sample.lane(2)}).containsExactly(1, 2, 3);
    assertThat(sample.readings()).isEqualTo(6);
  }

  /**
   * Lane means of layer 1: 15 um times 0.98, 1 and 1.02. The variance of their estimate is that of
   * the levels, 0.01^2 (1+0.6)/(1-0.6)/n for an autoregression, and of residual and place,
   * (0.03^2+0.01^2)/n.
   */
  @Test
  void lanesHaveTheirSteadyDeviations() {
    double error = 15.3 * Math.sqrt((1e-4 * 1.6 / 0.4 + 9e-4 + 1e-4) / COUNT);
    assertThat(mean(sample -> sample.thicknessUm(1, 0))).isCloseTo(14.7, within(4 * error));
    assertThat(mean(sample -> sample.thicknessUm(1, 1))).isCloseTo(15.0, within(4 * error));
    assertThat(mean(sample -> sample.thicknessUm(1, 2))).isCloseTo(15.3, within(4 * error));
  }

  /**
   * Lane 3 less lane 1, each over its mean, has twice the variance of residual and place; the level
   * cancels to first order. Standard error of a variance: itself times sqrt(2/n).
   */
  @Test
  void readingsScatterByResidualAndPlace() {
    double variance = variance(s -> s.thicknessUm(1, 2) / 15.3 - s.thicknessUm(1, 0) / 14.7) / 2;
    double expected = 0.03 * 0.03 + 0.01 * 0.01;
    assertThat(variance).isCloseTo(expected, within(4 * expected * Math.sqrt(2.0 / COUNT)));
  }

  /** What two layers have in common at a place is their covariance, 0.01^2. */
  @Test
  void layersOfOnePlaceVaryTogether() {
    ToDoubleFunction<Sample> first = s -> s.thicknessUm(1, 1) / 15 - 1;
    ToDoubleFunction<Sample> second = s -> s.thicknessUm(2, 1) / 36 - 1;
    double covariance = mean(s -> first.applyAsDouble(s) * second.applyAsDouble(s));
    double error = Math.sqrt(variance(first) * variance(second) / COUNT);
    assertThat(covariance).isCloseTo(1e-4, within(5 * error));
  }

  /**
   * Sample means of layer 2 have the variance 0.005^2 + (0.02^2 + 0.01^2)/3; neighbours have the
   * covariance 0.6 x 0.005^2.
   */
  @Test
  void levelsVaryFromSampleToSampleAndRememberTheLast() {
    ToDoubleFunction<Sample> level = SimulatedGaugeTest::levelOfLayerTwo;
    double expected = 2.5e-5 + 5e-4 / 3;
    assertThat(variance(level)).isCloseTo(expected, within(5 * expected * Math.sqrt(2.0 / COUNT)));
    double products = 0;
    for (int i = 1; i < COUNT; i++) {
      products += levelOfLayerTwo(MANY.get(i - 1)) * levelOfLayerTwo(MANY.get(i));
    }
    assertThat(products / (COUNT - 1)).isCloseTo(1.5e-5, within(5 * expected / Math.sqrt(COUNT)));
  }

  @Test
  void readingsAreMultiplesOfTheGaugesResolution() {
    FilmModel fine = TwoLayers.film(new Stability(0.01, 0.6, 0));
    FilmModel coarse =
        new FilmModel(fine.structure(), fine.layers(), fine.stability(), 20); // 0.05 um
    Sample sample = new Story(coarse, TwoLayers.SCHEDULE, 11, List.of()).samples(1).get(0);
    for (int lane = 0; lane < 3; lane++) {
      double um = sample.thicknessUm(1, lane);
      assertThat(um * 20).isEqualTo(Math.rint(um * 20));
      assertThat(um).isCloseTo(MANY.get(0).thicknessUm(1, lane), within(0.0255));
    }
  }

  /** Share of n places that are missing with chance p: standard error sqrt(p(1-p)/n). */
  @Test
  void someReadingsAreMissingAndTheOthersAreAsBefore() {
    FilmModel film = TwoLayers.film(new Stability(0.01, 0.6, 0.04));
    List<Sample> samples = new Story(film, TwoLayers.SCHEDULE, 11, List.of()).samples(COUNT);
    int readings = samples.stream().mapToInt(Sample::readings).sum();
    double places = 6.0 * COUNT;
    assertThat(1 - readings / places).isCloseTo(0.04, within(4 * Math.sqrt(0.04 * 0.96 / places)));
    Sample first = samples.stream().filter(s -> s.isMeasured(1, 0)).findFirst().orElseThrow();
    assertThat(first.thicknessUm(1, 0))
        .isEqualTo(MANY.get(samples.indexOf(first)).thicknessUm(1, 0));
  }

  @Test
  void aModelThatCannotBeIsRefused() {
    assertThatThrownBy(() -> new Stability(0, 1, 0)).hasMessageContaining("memory");
    assertThatThrownBy(() -> new Stability(Double.NaN, 0, 0)).hasMessageContaining("place");
    assertThatThrownBy(() -> new Stability(0, 0, 1)).hasMessageContaining("chance");
    assertThatThrownBy(() -> new LayerModel(0, 0, 0, List.of(0.0))).hasMessageContaining("zero");
    assertThatThrownBy(() -> new LayerModel(9, 2, 0, List.of(0.0))).hasMessageContaining("0.2");
    assertThatThrownBy(
            () -> new FilmModel(TwoLayers.STRUCTURE, List.of(), new Stability(0, 0, 0), 1))
        .hasMessageContaining("TWO-50 reports 2 layers but 0");
  }

  private static double levelOfLayerTwo(Sample s) {
    double lanes = s.thicknessUm(2, 0) / 1.01 + s.thicknessUm(2, 1) + s.thicknessUm(2, 2) / 0.99;
    return lanes / 3 / 36 - 1;
  }

  private static double mean(ToDoubleFunction<Sample> value) {
    return MANY.stream().mapToDouble(value).average().orElseThrow();
  }

  private static double variance(ToDoubleFunction<Sample> value) {
    double mean = mean(value);
    return mean(sample -> Math.pow(value.applyAsDouble(sample) - mean, 2));
  }
}
