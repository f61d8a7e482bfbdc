package dev.filmward.composition;

import static dev.filmward.composition.CompositionChart.THREE_SIGMA;
import static dev.filmward.composition.CovarianceEstimate.SAMPLE;
import static dev.filmward.composition.CovarianceEstimate.SUCCESSIVE;
import static dev.filmward.composition.Phase.BASELINE;
import static dev.filmward.composition.Phase.MONITORING;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.Figures;
import dev.filmward.stats.Restored;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CompositionChartTest {
  private static final double[] FILM_UM = {24, 4.5, 5, 4.5, 22};

  private static double[] layers(Map<String, String> row) {
    return new double[] {
      Double.parseDouble(row.get("one")),
      Double.parseDouble(row.get("two")),
      Double.parseDouble(row.get("three")),
      Double.parseDouble(row.get("four"))
    };
  }

  /**
   * By a general-purpose library, with the logarithms of all layers to the last one as ratios and
   * inverse matrices: other ratios, the same distances.
   */
  @Test
  void distanceAndTermsAgreeWithAnotherComputation() {
    List<Map<String, String>> rows = Figures.table(getClass(), "four-layers.csv");
    CompositionBaseline baseline = new CompositionBaseline(4);
    rows.subList(0, 40).forEach(row -> baseline.add(layers(row)));
    CompositionChart chart = new CompositionChart(baseline.reference(SAMPLE), THREE_SIGMA);
    double[] thinThird = layers(rows.get(40));
    Decomposition parts = chart.explain(thinThird);

    assertThat(chart.tSquared(thinThird)).isCloseTo(49.693879579378866, within(1e-9));
    assertThat(chart.limit(MONITORING)).isCloseTo(22.08304933137473, within(1e-9));
    assertThat(parts.tSquared()).isEqualTo(chart.tSquared(thinThird));
    assertThat(parts.aloneLimit()).isCloseTo(10.523224280849217, within(1e-9));
    assertThat(parts.givenOthersLimit()).isCloseTo(11.529598476049541, within(1e-9));
    double[][] expected = {
      {0.30213506090536685, 2.2504822266867563},
      {3.8238131365384858, 7.161259539607066},
      {1.6323665047874427, 0.5678430699630681},
      {-6.268914462478467, 49.56450183997999},
      {3.6290032688194684, 2.5766103278449535}
    };
    for (int position = 0; position <= 4; position++) {
      assertThat(parts.term(position).position()).isEqualTo(position);
      assertThat(parts.term(position).zAlone()).isCloseTo(expected[position][0], within(1e-10));
      assertThat(parts.term(position).givenOthers()).isCloseTo(expected[position][1], within(1e-9));
    }
    assertThat(parts.behind()).containsExactly(3);
    assertThat(parts.isBeyondAlone(parts.term(3))).isTrue();
    assertThat(parts.isBeyondGivenOthers(parts.term(3))).isTrue();
    assertThat(parts.isBeyondAlone(parts.term(2))).isFalse();
    assertThat(parts.isBeyondGivenOthers(parts.term(4))).isFalse();
  }

  /**
   * An invented film of five layers, each with 1 % of its own and 0.5 % in common; what is done to
   * it, and what must be named: layer 3 thin; all thin (line speed); 1 gives to 5; two ties.
   */
  @ParameterizedTest
  @CsvSource({
    "1 1 0.9 1 1, 3",
    "0.95 0.95 0.95 0.95 0.95, 0",
    "1.07 1 1 1 0.924, 5 1",
    "1 1.12 1 1.12 1, 2 4",
    "1.15 1 1 1 1, 1 0",
    "1 1 1 1 1, ''"
  })
  void whatIsBehindAPointIsNamed(String factors, String named) {
    CompositionChart chart = new CompositionChart(usual(new Random(5), 200), THREE_SIGMA);
    String[] each = factors.split(" ");
    double[] sample = FILM_UM.clone();
    for (int i = 0; i < 5; i++) {
      sample[i] *= Double.parseDouble(each[i]);
    }
    List<String> behind =
        chart.explain(sample).behind().stream().map(position -> "" + position).toList();

    assertThat(behind)
        .containsExactlyInAnyOrderElementsOf(
            named.isEmpty() ? List.of() : List.of(named.split(" ")));
    assertThat(chart.tSquared(sample) > chart.limit(MONITORING)).isEqualTo(!named.isEmpty());
  }

  private static CompositionReference usual(Random random, int samples) {
    CompositionBaseline baseline = new CompositionBaseline(5);
    for (int i = 0; i < samples; i++) {
      baseline.add(sample(random));
    }
    return baseline.reference(SAMPLE);
  }

  private static double[] sample(Random random) {
    double common = 0.005 * random.nextGaussian();
    double[] sample = FILM_UM.clone();
    for (int i = 0; i < sample.length; i++) {
      sample[i] *= Math.exp(common + 0.01 * random.nextGaussian());
    }
    return sample;
  }

  /** 60 lines from a fixed seed, baselines of 100: within four standard errors of 0.0027. */
  @Test
  void goodSamplesAreBeyondTheLimitAsOftenAsAsked() {
    long seed = 27;
    Random random = new Random(seed);
    int beyond = 0;
    for (int line = 0; line < 60; line++) {
      CompositionChart chart = new CompositionChart(usual(random, 100), THREE_SIGMA);
      double limit = chart.limit(MONITORING);
      for (int i = 0; i < 1000; i++) {
        beyond += chart.tSquared(sample(random)) > limit ? 1 : 0;
      }
    }

    assertThat(beyond / 60_000.0)
        .as("seed %d", seed)
        .isCloseTo(0.0027, within(4 * Math.sqrt(0.0027 / 60_000)));
  }

  /** Of a distance beyond its limit something is always named. */
  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void anUnusualSampleIsNeverWithoutALayer(long seed) {
    Random random = new Random(seed);
    CompositionChart chart = new CompositionChart(usual(random, 60), 0.05);
    for (int i = 0; i < 500; i++) {
      double[] sample = sample(random);
      if (chart.tSquared(sample) > chart.limit(MONITORING)) {
        assertThat(chart.explain(sample).behind()).isNotEmpty();
      }
    }
  }

  @Test
  void ofTwoLayersWhoseRatioIsUnusualBothAreNamed() {
    CompositionBaseline baseline = new CompositionBaseline(2);
    Random random = new Random(2);
    for (int i = 0; i < 60; i++) {
      baseline.add(new double[] {20 + 0.2 * random.nextGaussian(), 40 + random.nextGaussian()});
    }
    CompositionChart chart = new CompositionChart(baseline.reference(SUCCESSIVE), THREE_SIGMA);

    assertThat(chart.explain(new double[] {24, 36}).behind()).containsExactly(1, 2);
  }

  @Test
  void aLayerThatIsMissingOrZeroIsRefused() {
    CompositionBaseline baseline = new CompositionBaseline(2);

    assertThatThrownBy(() -> baseline.add(new double[] {12, 0}))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("layer 2");
    assertThatThrownBy(() -> baseline.add(new double[] {Double.NaN, 12}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> baseline.add(new double[] {1, 2, 3}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new CompositionBaseline(1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> baseline.reference(SAMPLE))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("collect more");
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void howeverTheBaselineIsSplitTheDistanceIsTheSame(long seed) {
    Random random = new Random(seed);
    CompositionBaseline whole = new CompositionBaseline(5);
    CompositionBaseline merged = new CompositionBaseline(5);
    CompositionBaseline piece = new CompositionBaseline(5);
    for (int i = 0; i < 150; i++) {
      double[] sample = sample(random);
      whole.add(sample);
      piece.add(sample);
      if (random.nextInt(15) == 0) {
        merged.merge(Restored.from(piece));
        piece = new CompositionBaseline(5);
      }
    }
    merged.merge(piece);
    double[] point = sample(random);

    assertThat(merged.samples()).isEqualTo(150);
    for (CovarianceEstimate estimate : CovarianceEstimate.values()) {
      CompositionChart expected = new CompositionChart(whole.reference(estimate), THREE_SIGMA);
      CompositionChart chart =
          Restored.from(new CompositionChart(merged.reference(estimate), THREE_SIGMA));
      assertThat(chart.tSquared(point))
          .isCloseTo(expected.tSquared(point), within(1e-9 * expected.tSquared(point)));
    }
    assertThat(merged.reference(SAMPLE).totalUm())
        .isCloseTo(whole.reference(SAMPLE).totalUm(), within(1e-12));
  }

  /**
   * Samples of the baseline itself: at 5 % a term by itself, and one given the others, is beyond
   * its limit in 5 of 100. 400 baselines of 25 samples of five layers from a fixed seed.
   */
  @Test
  void termsOfTheBaselineAreBeyondTheirLimitsAsOftenAsAsked() {
    Random random = new Random(29);
    double alpha = 0.05;
    int alone = 0;
    int given = 0;
    int terms = 0;
    for (int line = 0; line < 400; line++) {
      double[][] samples = new double[25][];
      CompositionBaseline baseline = new CompositionBaseline(5);
      for (int i = 0; i < samples.length; i++) {
        samples[i] = sample(random);
        baseline.add(samples[i]);
      }
      CompositionChart chart = new CompositionChart(baseline.reference(SAMPLE), alpha);
      for (double[] sample : samples) {
        Decomposition parts = chart.explain(sample, BASELINE);
        for (Decomposition.Term term : parts.terms()) {
          alone += parts.isBeyondAlone(term) ? 1 : 0;
          given += parts.isBeyondGivenOthers(term) ? 1 : 0;
          terms++;
        }
      }
    }
    assertThat(alone / (double) terms).isCloseTo(alpha, within(0.005));
    assertThat(given / (double) terms).isCloseTo(alpha, within(0.005));
  }
}
