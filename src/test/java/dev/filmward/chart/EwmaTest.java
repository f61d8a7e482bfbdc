package dev.filmward.chart;

import static dev.filmward.chart.EwmaDesign.Limits.ASYMPTOTIC;
import static dev.filmward.chart.EwmaDesign.Limits.EXACT;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.Figures;
import dev.filmward.stats.Restored;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class EwmaTest {

  /** Signals at 29 and 30, as computed from the printed data; the book's text says 28. */
  @Test
  void theTextbookTableIsMetWithExactLimits() {
    Ewma ewma = new Ewma(new EwmaDesign(0.1, 2.7, EXACT));
    List<Integer> beyond = new ArrayList<>();
    int observation = 0;
    for (Map<String, String> row : Figures.table(EwmaTest.class, "ewma-table-9-10.csv")) {
      SmoothedPoint point = ewma.next(number(row, "x") - 10);
      observation++;
      if (point.isBeyond()) {
        beyond.add(observation);
      }
      check(row, point, 10, 1);
    }

    assertThat(beyond).containsExactly(29, 30);
  }

  @Test
  void theHandbookExampleIsMetWithExactLimits() {
    Ewma ewma = new Ewma(new EwmaDesign(0.3, 3, EXACT));
    for (Map<String, String> row : Figures.table(EwmaTest.class, "ewma-handbook.csv")) {
      SmoothedPoint point = ewma.next((number(row, "x") - 50) / 2.0539);

      assertThat(point.value(50, 2.0539)).isCloseTo(number(row, "printed"), within(0.0051));
      assertThat(point.isBeyond()).isFalse();
      check(row, point, 50, 2.0539);
    }
  }

  private static void check(
      Map<String, String> row, SmoothedPoint point, double target, double sigma) {
    assertThat(point.value(target, sigma)).isCloseTo(number(row, "average"), within(1e-12));
    assertThat(point.limits(target, sigma).lower()).isCloseTo(number(row, "lower"), within(1e-12));
    assertThat(point.limits(target, sigma).upper()).isCloseTo(number(row, "upper"), within(1e-12));
  }

  /** Handbook 6.3.2.4 prints 47.4115 and 52.5884; the textbook 9.38 and 10.62. */
  @ParameterizedTest
  @CsvSource({"0.3, 3, 50, 2.0539, 52.588431738126616", "0.1, 2.7, 10, 1, 10.619422481450517"})
  void asymptoticLimitsAreMetFromTheFirstPointOn(
      double lambda, double reach, double target, double sigma, double upper) {
    SmoothedPoint point = new Ewma(new EwmaDesign(lambda, reach, ASYMPTOTIC)).next(0);

    assertThat(point.limits(target, sigma).upper()).isCloseTo(upper, within(1e-13));
  }

  /** With lambda 1 nothing is remembered: an ordinary chart of single points. */
  @Test
  void withoutMemoryItIsThePointItself() {
    Ewma ewma = new Ewma(new EwmaDesign(1, 3, EXACT));
    ewma.next(2);

    assertThat(ewma.next(-3.5)).isEqualTo(new SmoothedPoint(-3.5, 3));
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void averagesAreTheSameForAnyCutIntoPieces(long seed) {
    Random random = new Random(seed);
    Ewma whole = new Ewma(new EwmaDesign(0.2, 2.86, EXACT));
    Ewma cut = new Ewma(new EwmaDesign(0.2, 2.86, EXACT));
    Ewma bare = new Ewma(new EwmaDesign(0.2, 2.86, EXACT));
    for (int i = 0; i < 100; i++) {
      double z = random.nextGaussian();
      cut = random.nextInt(5) == 0 ? Restored.from(cut) : cut;
      SmoothedPoint point = whole.next(z);

      assertThat(cut.next(z)).isEqualTo(point);
      assertThat(bare.advance(z)).isEqualTo(point.value() / point.limit());
    }
  }

  @ParameterizedTest
  @CsvSource({"0, 3", "-0.1, 3", "1.1, 3", "NaN, 3", "0.2, 0", "0.2, NaN", "0.2, Infinity"})
  void whatIsNoDesignIsRefused(double lambda, double reach) {
    assertThatThrownBy(() -> new EwmaDesign(lambda, reach, EXACT))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aPointWithoutAPlaceIsRefused() {
    Ewma ewma = new Ewma(new EwmaDesign(0.2, 3, EXACT));

    assertThatThrownBy(() -> ewma.next(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
  }

  private static double number(Map<String, String> row, String heading) {
    return Double.parseDouble(row.get(heading));
  }
}
