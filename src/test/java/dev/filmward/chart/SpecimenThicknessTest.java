package dev.filmward.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.Figures;
import dev.filmward.subgroup.Subgroup;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * NIST reference data SILICON.DAT, 20 days of 5 specimens. NIST gives the readings; the chart
 * values were computed apart from this project.
 */
class SpecimenThicknessTest {
  private final double[][] days = Figures.rows(getClass(), "specimen-thickness.csv");
  private final Baseline baseline = new Baseline();

  SpecimenThicknessTest() {
    for (double[] day : days) {
      baseline.add(Subgroup.of(day, day.length));
    }
  }

  @Test
  void limitsAreMet() {
    MeanRangeLimits limits = baseline.limits().orElseThrow();

    assertThat(limits.centre()).isCloseTo(23.726, within(1e-13));
    assertThat(baseline.rangeBar()).isCloseTo(2.05, within(1e-14));
    assertThat(limits.sigmaWithin()).isCloseTo(0.8813682818628003, within(1e-10));
    assertThat(limits.mean(5).lower()).isCloseTo(22.543520365125552, within(1e-9));
    assertThat(limits.mean(5).upper()).isCloseTo(24.908479634874453, within(1e-9));
    assertThat(limits.range(5).lower()).isZero();
    assertThat(limits.range(5).centre()).isCloseTo(2.05, within(1e-9));
    assertThat(limits.range(5).upper()).isCloseTo(4.334723247455115, within(1e-9));
  }

  @Test
  void onlyTheLastDayIsBeyondTheLimitsOnBothCharts() {
    MeanRangeLimits limits = baseline.limits().orElseThrow();
    List<Integer> means = new ArrayList<>();
    List<Integer> ranges = new ArrayList<>();
    for (int day = 1; day <= days.length; day++) {
      ChartPoint point = limits.plot(Subgroup.of(days[day - 1], 5));
      if (Math.abs(point.zMean()) > 3) {
        means.add(day);
      }
      if (Math.abs(point.zRange().orElseThrow()) > 3) {
        ranges.add(day);
      }
    }

    assertThat(means).containsExactly(20);
    assertThat(ranges).containsExactly(20);
  }
}
