package dev.filmward.capability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.Normal;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class NormalityGateTest {

  @Test
  void evenlySpreadNormalScoresPass() {
    NormalityGate gate = NormalityGate.of(scores(100));

    assertThat(gate.verdict()).isEqualTo(Normality.NORMAL);
    assertThat(gate.words()).startsWith("nothing speaks against").contains("Anderson-Darling p = ");
  }

  @Test
  void theirExponentialsDoNot() {
    double[] skewed = Arrays.stream(scores(100)).map(Math::exp).toArray();

    assertThat(NormalityGate.of(skewed).verdict()).isEqualTo(Normality.NOT_NORMAL);
    assertThat(NormalityGate.of(skewed).words()).startsWith("not normal");
  }

  /** Rounded to a third of sigma, 5000 readings fail every test and are normal for any purpose. */
  @Test
  void ofManyReadingsTheShapeDecidesAndNotTheTest() {
    double[] rounded = Arrays.stream(scores(5000)).map(z -> Math.rint(3 * z) / 3).toArray();
    NormalityGate gate = NormalityGate.of(rounded);

    assertThat(gate.test().orElseThrow().p()).isLessThan(0.05);
    assertThat(gate.verdict()).isEqualTo(Normality.NORMAL);
    assertThat(gate.words()).contains("skewness");
  }

  /** z + 0.1 z^2 has its upper point at 3 sigma about 0.8 sigma too far out. */
  @Test
  void ofManyReadingsASkewedShapeFails() {
    double[] skewed = Arrays.stream(scores(5000)).map(z -> z + 0.1 * z * z).toArray();

    assertThat(NormalityGate.of(skewed).verdict()).isEqualTo(Normality.NOT_NORMAL);
  }

  @Test
  void fewOrEqualReadingsAreNotJudged() {
    assertThat(NormalityGate.of(new double[0]).verdict()).isEqualTo(Normality.NOT_JUDGED);
    assertThat(NormalityGate.of(scores(7)).verdict()).isEqualTo(Normality.NOT_JUDGED);
    assertThat(NormalityGate.of(new double[50]).verdict()).isEqualTo(Normality.NOT_JUDGED);
    assertThat(NormalityGate.of(new double[50]).words()).isEqualTo(Normality.NOT_JUDGED.words());
  }

  /** 1, 1, 1, 5 about 2: squares 12, cubes 24, fourth powers 84; 6/3^1.5 and 21/9 - 3. */
  @Test
  void skewnessAndKurtosisSpelledOut() {
    Shape shape = Shape.of(new double[] {1, 1, 1, 5});

    assertThat(shape.skewness()).isCloseTo(6 / Math.pow(3, 1.5), within(1e-14));
    assertThat(shape.excessKurtosis()).isCloseTo(21 / 9.0 - 3, within(1e-14));
  }

  private static double[] scores(int n) {
    return IntStream.range(0, n)
        .mapToDouble(i -> Normal.STANDARD.quantile((i + 0.5) / n))
        .toArray();
  }
}
