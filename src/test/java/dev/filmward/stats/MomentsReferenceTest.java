package dev.filmward.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** NIST Statistical Reference Datasets, univariate summary statistics: nine sets, certified. */
class MomentsReferenceTest {

  /**
   * @param tolerance of the standard deviation, relative: 14 digits, or what is left when the
   *     decimals in the file are rounded to doubles, which no arithmetic can mend
   */
  record Dataset(String name, double[] values, double mean, double deviation, double tolerance) {
    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Dataset> datasets() {
    return Stream.of(
        new Dataset("Lottery", file("lottery"), 518.958715596330, 291.699727470969, 1e-14),
        new Dataset("Lew", file("lew"), -177.435, 277.332168044316, 1e-14),
        new Dataset("Mavro", file("mavro"), 2.001856, 0.000429123454003053, 1e-13),
        new Dataset("Michelso", file("michelso"), 299.8524, 0.0790105478190518, 1e-13),
        new Dataset("PiDigits", file("pidigits"), 4.5348, 2.86733906028871, 1e-14),
        new Dataset("NumAcc1", new double[] {10000001, 10000003, 10000002}, 10000002, 1, 0),
        new Dataset("NumAcc2", steps(1.2, 1.1, 1.3), 1.2, 0.1, 1e-14),
        new Dataset("NumAcc3", steps(1000000.2, 1000000.1, 1000000.3), 1000000.2, 0.1, 1e-9),
        new Dataset("NumAcc4", steps(10000000.2, 10000000.1, 10000000.3), 10000000.2, 0.1, 1e-8));
  }

  @ParameterizedTest
  @MethodSource("datasets")
  void theCertifiedValuesAreMet(Dataset dataset) {
    Moments moments = of(dataset.values);

    assertThat(moments.count()).isEqualTo(dataset.values.length);
    assertThat(moments.mean()).isCloseTo(dataset.mean, within(2e-15 * Math.abs(dataset.mean)));
    assertThat(moments.standardDeviation().orElseThrow())
        .isCloseTo(dataset.deviation, within(dataset.tolerance * dataset.deviation));
  }

  /** The same doubles in decimal arithmetic of 60 digits: here nothing may be lost. */
  @ParameterizedTest
  @MethodSource("datasets")
  void everyDigitIsThatOfExactArithmetic(Dataset dataset) {
    Moments moments = of(dataset.values);
    BigDecimal mean = exactMean(dataset.values);
    BigDecimal squares =
        Arrays.stream(dataset.values)
            .mapToObj(value -> new BigDecimal(value).subtract(mean).pow(2))
            .reduce(BigDecimal.ZERO, BigDecimal::add);
    double variance = squares.doubleValue() / (dataset.values.length - 1);

    assertThat(moments.mean()).isEqualTo(mean.doubleValue());
    assertThat(moments.sumOfSquares())
        .isCloseTo(squares.doubleValue(), within(3e-16 * squares.doubleValue()));
    assertThat(moments.standardDeviation().orElseThrow())
        .isCloseTo(Math.sqrt(variance), within(5e-16 * Math.sqrt(variance)));
  }

  private static BigDecimal exactMean(double[] values) {
    return Arrays.stream(values)
        .mapToObj(BigDecimal::new)
        .reduce(BigDecimal.ZERO, BigDecimal::add)
        .divide(BigDecimal.valueOf(values.length), new MathContext(60));
  }

  private static Moments of(double[] values) {
    Moments moments = new Moments();
    Arrays.stream(values).forEach(moments::add);
    return moments;
  }

  private static double[] file(String name) {
    return Arrays.stream(Figures.rows(MomentsReferenceTest.class, "strd-" + name + ".csv"))
        .flatMapToDouble(Arrays::stream)
        .toArray();
  }

  /** One value, then two others in turn 500 times: how the accuracy sets are made. */
  private static double[] steps(double first, double low, double high) {
    double[] values = new double[1001];
    values[0] = first;
    for (int i = 1; i < values.length; i++) {
      values[i] = i % 2 == 1 ? low : high;
    }
    return values;
  }
}
