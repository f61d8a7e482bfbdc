package dev.filmward.gauge.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class BudgetTest {

  /**
   * JCGM 100, annex H.1, a gauge block by comparison, from memory: 25 nm with 18 degrees of
   * freedom, 9.7 nm with 25.6, 2.9 nm with 50 and 16.6 nm with 2 give 32 nm with 16 whole degrees,
   * k99 = 2.92 and U99 = 93 nm.
   */
  @Test
  void aGaugeBlockIsAsUncertainAsTheGuideSays() {
    Budget block =
        new Budget(
            List.of(part(25, 18), part(9.7, 25.6), part(2.9, 50), part(16.6, 2)),
            Coverage.student(0.99));
    assertThat(block.combined()).isCloseTo(32, within(0.5));
    assertThat(Math.floor(block.effectiveDegrees())).isEqualTo(16);
    assertThat(block.factor()).isCloseTo(2.92, within(0.005));
    assertThat(block.expanded()).isCloseTo(93, within(0.8));
  }

  private static Component part(double standard, double degrees) {
    return new Component("part", "nm", new Uncertain(standard, degrees), 1);
  }

  /** JCGM 100, table G.2, from memory: t for 95 % and 95.45 % with some degrees of freedom. */
  @Test
  void factorsAreThoseOfThePrintedTable() {
    assertThat(Coverage.student(0.95).factor(1)).isCloseTo(12.71, within(0.005));
    assertThat(Coverage.student(0.95).factor(10.9)).isCloseTo(2.23, within(0.005));
    assertThat(Coverage.student(0.9545).factor(20)).isCloseTo(2.13, within(0.005));
    assertThat(Coverage.student(0.95).factor(Double.POSITIVE_INFINITY))
        .isCloseTo(1.96, within(0.0005));
    assertThat(Coverage.TWO.factor(1)).isEqualTo(2);
  }

  @Test
  void sharesAddUpToOne() {
    Budget budget = new Budget(List.of(part(3, 5), part(4, 5)), Coverage.TWO);
    assertThat(budget.combined()).isEqualTo(5);
    assertThat(budget.share(budget.components().get(0))).isCloseTo(9 / 25.0, within(1e-15));
    assertThat(budget.share(budget.components().get(1))).isCloseTo(16 / 25.0, within(1e-15));
    // 5^4 / (3^4 / 5 + 4^4 / 5)
    assertThat(budget.effectiveDegrees()).isCloseTo(625 * 5 / (81 + 256.0), within(1e-12));
  }

  @Test
  void withNothingUncertainNothingIsAnybodysShare() {
    Budget none = new Budget(List.of(part(0, 5)), Coverage.student(0.95));
    assertThat(none.expanded()).isZero();
    assertThat(none.share(none.components().get(0))).isZero();
  }

  @Test
  void halfWidthsAreDividedByRootThree() {
    assertThat(Uncertain.rectangular(2).standard()).isCloseTo(2 / Math.sqrt(3), within(1e-15));
    assertThat(Uncertain.between(1900, 2080).standard())
        .isCloseTo(180 / Math.sqrt(12), within(1e-12));
    assertThatIllegalArgumentException().isThrownBy(() -> Uncertain.of(Double.NaN));
    assertThatIllegalArgumentException().isThrownBy(() -> new Uncertain(1, Double.NaN));
  }
}
