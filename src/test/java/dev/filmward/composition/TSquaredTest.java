package dev.filmward.composition;

import static dev.filmward.composition.CovarianceEstimate.SAMPLE;
import static dev.filmward.composition.CovarianceEstimate.SUCCESSIVE;
import static dev.filmward.composition.Phase.BASELINE;
import static dev.filmward.composition.Phase.MONITORING;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.Figures;
import dev.filmward.stats.Restored;
import dev.filmward.stats.StudentT;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class TSquaredTest {

  static Stream<Map<String, String>> limits() {
    return Figures.table(TSquaredTest.class, "limits.csv").stream();
  }

  private static double number(Map<String, String> row, String heading) {
    return Double.parseDouble(row.get(heading));
  }

  @ParameterizedTest
  @MethodSource("limits")
  void limitsAgreeWithAGeneralPurposeLibrary(Map<String, String> row) {
    String[] sizes = {"", "single", "", "three", "four", "five"};
    for (int size : new int[] {1, 3, 4, 5}) {
      int m = Integer.parseInt(row.get("m"));
      int p = Integer.parseInt(row.get("p"));
      TSquaredDesign design = new TSquaredDesign(p, m, size, SAMPLE);
      for (Phase phase : Phase.values()) {
        double expected = number(row, sizes[size] + (phase == BASELINE ? 1 : 2));
        assertThat(design.limit(phase, number(row, "alpha")))
            .as("%s of %d", phase, size)
            .isCloseTo(expected, within(1e-10 * expected));
      }
    }
  }

  /** One number: t and its square, with a mean of n numbers estimated too. */
  @Test
  void ofOneNumberTheLimitIsThatOfStudentsT() {
    TSquaredDesign design = new TSquaredDesign(1, 25, 1, SAMPLE);
    double t = new StudentT(24).upperQuantile(0.00135);

    assertThat(design.limit(MONITORING, 0.0027)).isCloseTo(26 / 25.0 * t * t, within(1e-10));
    assertThat(design.termLimit(0, 0.0027)).isCloseTo(26 / 25.0 * t * t, within(1e-10));
  }

  /** Ryan: subgroups 10 and 20 are beyond 11.04 at a probability of 0.0054. */
  @Test
  void subgroupsOfTheTextbookAreMet() {
    SubgroupVectorBaseline baseline = new SubgroupVectorBaseline(2);
    List<Map<String, String>> rows = Figures.table(getClass(), "subgroups-of-pairs.csv");
    rows.forEach(row -> baseline.add(pairs(row)));
    TSquaredReference reference = baseline.reference();
    double limit = reference.design().limit(BASELINE, 0.0054);

    assertThat(reference.mean(0)).isCloseTo(60.375, within(1e-13));
    assertThat(reference.mean(1)).isCloseTo(18.4875, within(1e-13));
    assertThat(reference.covariance(0, 0)).isCloseTo(222.0333333333333, within(1e-12));
    assertThat(reference.covariance(1, 0)).isCloseTo(103.11666666666667, within(1e-12));
    assertThat(limit).isCloseTo(11.04, within(0.005));
    assertThat(reference.design().limit(MONITORING, 0.0054))
        .isCloseTo(12.198392625504836, within(1e-9));
    for (int i = 0; i < 20; i++) {
      double tSquared = reference.tSquared(mean(pairs(rows.get(i))));
      assertThat(tSquared).isCloseTo(number(rows.get(i), "tSquared"), within(1e-11));
      assertThat(tSquared > limit).as("subgroup %d", i + 1).isEqualTo(i == 9 || i == 19);
    }
  }

  private static double[][] pairs(Map<String, String> row) {
    double[] numbers =
        Arrays.stream(row.get("pairs").split(" ")).mapToDouble(Double::parseDouble).toArray();
    double[][] pairs = new double[numbers.length / 2][];
    for (int i = 0; i < pairs.length; i++) {
      pairs[i] = new double[] {numbers[2 * i], numbers[2 * i + 1]};
    }
    return pairs;
  }

  private static double[] mean(double[][] pairs) {
    return new double[] {
      Arrays.stream(pairs).mapToDouble(pair -> pair[0]).average().orElseThrow(),
      Arrays.stream(pairs).mapToDouble(pair -> pair[1]).average().orElseThrow()
    };
  }

  /** Holmes and Mergen: 3.770, -5.495, 13.53 by the sample, 1.562, -2.093, 6.721 by steps. */
  @Test
  void bothCovariancesOfTheGradesAreMet() {
    TSquaredReference sample = grades().reference(SAMPLE);
    TSquaredReference steps = grades().reference(SUCCESSIVE);

    assertThat(sample.covariance(0, 0)).isCloseTo(3.770220779220779, within(1e-13));
    assertThat(sample.covariance(0, 1)).isCloseTo(-5.49546103896104, within(1e-13));
    assertThat(sample.covariance(1, 1)).isCloseTo(13.528516233766238, within(1e-13));
    assertThat(steps.covariance(0, 0)).isCloseTo(1.5624545454545458, within(1e-13));
    assertThat(steps.covariance(0, 1)).isCloseTo(-2.09309090909091, within(1e-13));
    assertThat(steps.covariance(1, 1)).isCloseTo(6.721090909090913, within(1e-13));
    assertThat(sample.design().limit(BASELINE, 0.0027))
        .isCloseTo(10.805527272902822, within(1e-10));
    for (Map<String, String> row : Figures.table(getClass(), "grades.csv")) {
      double[] vector = {number(row, "large"), number(row, "medium")};
      assertThat(sample.tSquared(vector)).isCloseTo(number(row, "sample"), within(1e-11));
      assertThat(steps.tSquared(vector)).isCloseTo(number(row, "successive"), within(1e-11));
    }
  }

  private static VectorBaseline grades() {
    VectorBaseline baseline = new VectorBaseline(2);
    for (Map<String, String> row : Figures.table(TSquaredTest.class, "grades.csv")) {
      baseline.add(new double[] {number(row, "large"), number(row, "medium")});
    }
    return baseline;
  }

  /** The three grades sum to 100, so the third says nothing new. */
  @Test
  void partsThatSumToAConstantAreRefused() {
    VectorBaseline baseline = new VectorBaseline(3);
    for (Map<String, String> row : Figures.table(getClass(), "grades.csv")) {
      double large = number(row, "large");
      double medium = number(row, "medium");
      baseline.add(new double[] {large, medium, 100 - large - medium});
    }

    assertThatThrownBy(() -> baseline.reference(SAMPLE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("component 3");
  }

  /**
   * Normal vectors, limits for 2 of 100: held against later vectors exact with the sample
   * covariance, near with that of steps. 2000 baselines of 30 from a fixed seed, ten vectors each.
   */
  @ParameterizedTest
  @CsvSource({"SAMPLE, 0.0025", "SUCCESSIVE, 0.005"})
  void falseAlarmsComeAsOftenAsAsked(CovarianceEstimate estimate, double tolerance) {
    long seed = 1992;
    Random random = new Random(seed);
    double limit = new TSquaredDesign(3, 30, 1, estimate).limit(MONITORING, 0.02);
    int beyond = 0;
    for (int i = 0; i < 2000; i++) {
      VectorBaseline baseline = new VectorBaseline(3);
      for (int j = 0; j < 30; j++) {
        baseline.add(vector(random));
      }
      TSquaredReference reference = baseline.reference(estimate);
      for (int j = 0; j < 10; j++) {
        beyond += reference.tSquared(vector(random)) > limit ? 1 : 0;
      }
    }

    assertThat(beyond / 20_000.0).as("seed %d", seed).isCloseTo(0.02, within(tolerance));
  }

  private static double[] vector(Random random) {
    double common = random.nextGaussian();
    return new double[] {
      5 + common, 7 + common + random.nextGaussian(), 9 - common + 0.5 * random.nextGaussian()
    };
  }

  @ParameterizedTest
  @EnumSource(CovarianceEstimate.class)
  void aBaselineThatIsTooShortIsSaid(CovarianceEstimate estimate) {
    TSquaredDesign design = new TSquaredDesign(4, 5, 1, estimate);

    assertThatThrownBy(() -> design.limit(BASELINE, 0.01))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("collect more");
    assertThatThrownBy(() -> design.termLimit(4, 0.01)).isInstanceOf(IllegalStateException.class);
    assertThat(TSquaredDesign.fewestSamples(4)).isEqualTo(40);
  }

  @Test
  void whatDoesNotFitIsRefused() {
    TSquaredReference reference = grades().reference(SAMPLE);
    SubgroupVectorBaseline subgroups = new SubgroupVectorBaseline(2);
    subgroups.add(new double[][] {{1, 2}, {3, 4}});

    assertThatThrownBy(() -> reference.tSquared(new double[] {1}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> reference.tSquared(new double[] {1, Double.NaN}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> subgroups.add(new double[][] {{1, 2}, {3, 4}, {5, 6}}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(subgroups::reference).isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> new VectorBaseline(2).reference(SAMPLE))
        .isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> new TSquaredDesign(2, 20, 4, SUCCESSIVE))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new TSquaredDesign(0, 20, 1, SAMPLE))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(
            () ->
                new TSquaredReference(
                    new double[1], new double[2][2], new TSquaredDesign(2, 20, 1, SAMPLE)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void howeverABaselineIsSplitTheDistancesAreTheSame(long seed) {
    Random random = new Random(seed);
    VectorBaseline whole = new VectorBaseline(3);
    VectorBaseline merged = new VectorBaseline(3);
    VectorBaseline piece = new VectorBaseline(3);
    SubgroupVectorBaseline subgroups = new SubgroupVectorBaseline(3);
    SubgroupVectorBaseline mergedSubgroups = new SubgroupVectorBaseline(3);
    for (int i = 0; i < 200; i++) {
      double[] vector = vector(random);
      double[][] subgroup = {vector, vector(random), vector(random)};
      whole.add(vector);
      piece.add(vector);
      subgroups.add(subgroup);
      SubgroupVectorBaseline one = new SubgroupVectorBaseline(3);
      one.add(subgroup);
      mergedSubgroups.merge(Restored.from(one));
      if (random.nextInt(20) == 0) {
        merged.merge(Restored.from(piece));
        merged.merge(new VectorBaseline(3));
        piece = new VectorBaseline(3);
      }
    }
    merged.merge(piece);
    double[] point = vector(random);

    assertThat(merged.samples()).isEqualTo(200);
    for (CovarianceEstimate estimate : CovarianceEstimate.values()) {
      double expected = whole.reference(estimate).tSquared(point);
      assertThat(merged.reference(estimate).tSquared(point))
          .isCloseTo(expected, within(1e-12 * expected));
    }
    double expected = subgroups.reference().tSquared(point);
    assertThat(mergedSubgroups.subgroups()).isEqualTo(200);
    assertThat(Restored.from(mergedSubgroups.reference()).tSquared(point))
        .isCloseTo(expected, within(1e-12 * expected));
  }
}
