package dev.filmward.chart;

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

class CusumTest {

  @Test
  void theHandbookExampleIsMet() {
    assertThat(signals("cusum-handbook.csv", 325, CusumDesign.of(0.3175, 4.1959)))
        .containsExactly(14, 15, 16, 17, 18, 19, 20);
  }

  @Test
  void theConcentrationsStayWithinTheirLimit() {
    assertThat(signals("concentrations.csv", 99, CusumDesign.of(1, 10))).isEmpty();
  }

  private static List<Integer> signals(String file, double target, CusumDesign design) {
    Cusum cusum = new Cusum(design);
    List<Integer> signals = new ArrayList<>();
    int group = 0;
    for (Map<String, String> row : Figures.table(CusumTest.class, file)) {
      CusumPoint point = cusum.next(Double.parseDouble(row.get("x")) - target);
      group++;
      assertThat(point.high().value())
          .isCloseTo(Double.parseDouble(row.get("high")), within(1e-12));
      assertThat(point.low().value()).isCloseTo(Double.parseDouble(row.get("low")), within(1e-12));
      if (point.isHigh() || point.isLow()) {
        signals.add(group);
      }
    }
    return signals;
  }

  /** The mean of the handbook's data moved at group 13, the second last zero before 14. */
  @Test
  void itTellsHowLongAgoTheChangeBegan() {
    Cusum cusum = new Cusum(CusumDesign.of(0.3175, 4.1959));
    CusumPoint point = null;
    for (Map<String, String> row :
        Figures.table(CusumTest.class, "cusum-handbook.csv").subList(0, 14)) {
      point = cusum.next(Double.parseDouble(row.get("x")) - 325);
    }

    assertThat(point.isHigh()).isTrue();
    assertThat(point.high().points()).isEqualTo(2);
    assertThat(point.low().points()).isZero();
  }

  @Test
  void aHeadStartIsWornOffByGoodPoints() {
    Cusum cusum = new Cusum(new CusumDesign(0.5, 5, 2.5));

    assertThat(cusum.next(0).high().value()).isEqualTo(2);
    assertThat(cusum.next(0).low().value()).isEqualTo(1.5);
    for (int i = 0; i < 3; i++) {
      cusum.next(0);
    }
    assertThat(cusum.next(0).high().value()).isZero();
    cusum.restart();
    assertThat(cusum.next(0).high().value()).isEqualTo(2);
  }

  @Test
  void aLargeStepIsSeenSoonerWithAHeadStart() {
    Cusum without = new Cusum(CusumDesign.of(0.5, 5));
    Cusum with = new Cusum(new CusumDesign(0.5, 5, 2.5));

    assertThat(without.next(-3.1).isLow()).isFalse();
    assertThat(with.next(-3.1).isLow()).isTrue();
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void sumsAreTheSameForAnyCutIntoPieces(long seed) {
    Random random = new Random(seed);
    Cusum whole = new Cusum(new CusumDesign(0.5, 4, 2));
    Cusum cut = new Cusum(new CusumDesign(0.5, 4, 2));
    for (int i = 0; i < 100; i++) {
      double z = random.nextGaussian();
      cut = random.nextInt(5) == 0 ? Restored.from(cut) : cut;

      assertThat(cut.next(z)).isEqualTo(whole.next(z));
    }
  }

  @ParameterizedTest
  @CsvSource({"-0.1, 5, 0", "NaN, 5, 0", "0.5, 0, 0", "0.5, 5, 5", "0.5, 5, -1"})
  void whatIsNoDesignIsRefused(double allowance, double limit, double headStart) {
    assertThatThrownBy(() -> new CusumDesign(allowance, limit, headStart))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aPointWithoutAPlaceIsRefused() {
    assertThatThrownBy(() -> new Cusum(CusumDesign.of(0.5, 5)).next(Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
