package dev.filmward.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.Restored;
import dev.filmward.subgroup.Subgroup;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class BaselineTest {

  @Test
  void anEmptyBaselineHasNoLimits() {
    Baseline baseline = new Baseline();

    assertThat(baseline.subgroups()).isZero();
    assertThat(baseline.sigmaWithin()).isEmpty();
    assertThat(baseline.limits()).isEmpty();
    assertThatThrownBy(baseline::centre).isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(baseline::rangeBar).isInstanceOf(IllegalStateException.class);
  }

  @Test
  void subgroupsOfOneGiveACentreAndNoLimits() {
    Baseline baseline = new Baseline();
    baseline.add(1, 3.2, 0);
    baseline.add(1, 3.4, 0);

    assertThat(baseline.centre()).isCloseTo(3.3, within(1e-15));
    assertThat(baseline.limits()).isEmpty();
    assertThatThrownBy(baseline::rangeBar).isInstanceOf(IllegalStateException.class);
  }

  @Test
  void twoReadingsOneApartHaveASigmaOfHalfTheRootOfPi() {
    Baseline baseline = new Baseline();
    baseline.add(Subgroup.of(new double[] {1, 2}, 2));

    assertThat(baseline.centre()).isEqualTo(1.5);
    assertThat(baseline.sigmaWithin().orElseThrow())
        .isCloseTo(Math.sqrt(Math.PI) / 2, within(1e-14));
  }

  @Test
  void equalReadingsHaveLimitsOfNoWidth() {
    Baseline baseline = new Baseline();
    for (int i = 0; i < 7; i++) {
      baseline.add(Subgroup.of(new double[] {5.5, 5.5, 5.5}, 3));
    }

    MeanRangeLimits limits = baseline.limits().orElseThrow();
    assertThat(limits).isEqualTo(new MeanRangeLimits(5.5, 0));
    assertThat(limits.mean(3)).isEqualTo(new Band(5.5, 5.5, 5.5));
    assertThat(limits.range(3)).isEqualTo(new Band(0, 0, 0));
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 0, 101, 5000})
  void aSizeThatCannotBeChartedIsRefusedWithWhatToDo(int size) {
    assertThatThrownBy(() -> new Baseline().add(size, 10, 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("1 to 100 readings, not " + size)
        .hasMessageContaining("fewer lanes");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.1, Double.NaN, Double.POSITIVE_INFINITY})
  void whatIsNoRangeIsRefusedAndLeavesNoTrace(double range) {
    Baseline baseline = new Baseline();

    assertThatThrownBy(() -> baseline.add(5, 10, range))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(baseline.subgroups()).isZero();
    assertThat(baseline.readings()).isZero();
  }

  static LongStream seeds() {
    return LongStream.range(0, 100);
  }

  /** Pieces of any length, saved and restored, then merged in the order in which they came. */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void howeverItIsSplitTheLimitsAreTheSame(long seed) {
    Random random = new Random(seed);
    Baseline whole = new Baseline();
    Baseline merged = new Baseline();
    Baseline piece = new Baseline();
    whole.add(2, 12, 0.5);
    piece.add(2, 12, 0.5);
    for (int i = random.nextInt(200); i >= 0; i--) {
      int size = 1 + random.nextInt(100);
      double mean = 12 + random.nextGaussian();
      double range = random.nextDouble();
      whole.add(size, mean, range);
      piece.add(size, mean, range);
      if (random.nextInt(10) == 0) {
        merged.merge(Restored.from(piece));
        piece = new Baseline();
      }
    }
    merged.merge(piece);

    assertThat(merged.subgroups()).isEqualTo(whole.subgroups());
    assertThat(merged.readings()).isEqualTo(whole.readings());
    assertThat(merged.rangeBar()).isCloseTo(whole.rangeBar(), within(1e-15));
    MeanRangeLimits expected = whole.limits().orElseThrow();
    MeanRangeLimits limits = merged.limits().orElseThrow();
    assertThat(limits.centre()).isCloseTo(expected.centre(), within(1e-14));
    assertThat(limits.sigmaWithin()).isCloseTo(expected.sigmaWithin(), within(1e-15));
  }
}
