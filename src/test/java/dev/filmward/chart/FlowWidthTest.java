package dev.filmward.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.Figures;
import dev.filmward.subgroup.Subgroup;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * D. C. Montgomery, Introduction to Statistical Quality Control, Example 6.1: mean and range charts
 * of the width of a resist. The book's limits come from factors of three digits.
 */
class FlowWidthTest {
  private static final double OF_THE_BOOK = 0.0002;

  private final Baseline baseline = new Baseline();

  FlowWidthTest() {
    for (double[] sample : Figures.rows(getClass(), "flow-width-phase1.csv")) {
      baseline.add(Subgroup.of(sample, sample.length));
    }
  }

  @Test
  void averagesAreThoseOfTheBook() {
    assertThat(baseline.subgroups()).isEqualTo(25);
    assertThat(baseline.readings()).isEqualTo(125);
    assertThat(baseline.centre()).isCloseTo(1.5056, within(OF_THE_BOOK));
    assertThat(baseline.rangeBar()).isCloseTo(0.32521, within(OF_THE_BOOK));
    assertThat(baseline.sigmaWithin().orElseThrow()).isCloseTo(0.1398, within(OF_THE_BOOK));
  }

  @Test
  void limitsAreThoseOfTheBook() {
    Band mean = limits().mean(5);
    Band range = limits().range(5);

    assertThat(mean.lower()).isCloseTo(1.31795, within(OF_THE_BOOK));
    assertThat(mean.upper()).isCloseTo(1.69325, within(OF_THE_BOOK));
    assertThat(range.lower()).isZero();
    assertThat(range.centre()).isCloseTo(0.32521, within(OF_THE_BOOK));
    assertThat(range.upper()).isCloseTo(0.68749, within(OF_THE_BOOK));
  }

  /** The same from unrounded factors, computed apart from this project. */
  @Test
  void limitsInFullPrecisionAreMet() {
    assertThat(baseline.centre()).isCloseTo(1.5056104, within(1e-15));
    assertThat(baseline.rangeBar()).isCloseTo(0.325208, within(1e-15));
    assertThat(limits().sigmaWithin()).isCloseTo(0.13981854449172562, within(1e-11));
    assertThat(limits().mean(5).lower()).isCloseTo(1.3180241380008535, within(1e-10));
    assertThat(limits().mean(5).upper()).isCloseTo(1.6931966619991463, within(1e-10));
    assertThat(limits().range(5).upper()).isCloseTo(0.687652037979699, within(1e-10));
  }

  @Test
  void ofTheFurtherSamplesNumbers43And45AreBeyondTheMeanLimitsAndNoRangeIs() {
    List<Integer> beyond = new ArrayList<>();
    int number = 26;
    for (double[] sample : Figures.rows(getClass(), "flow-width-phase2.csv")) {
      ChartPoint point = limits().plot(Subgroup.of(sample, sample.length));
      if (Math.abs(point.zMean()) > 3) {
        beyond.add(number);
      }
      assertThat(Math.abs(point.zRange().orElseThrow())).isLessThan(3);
      number++;
    }

    assertThat(beyond).containsExactly(43, 45);
  }

  private MeanRangeLimits limits() {
    return baseline.limits().orElseThrow();
  }
}
