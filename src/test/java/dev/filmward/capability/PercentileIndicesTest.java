package dev.filmward.capability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.filmward.film.SpecLimits;
import dev.filmward.stats.Normal;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PercentileIndicesTest {
  private static final OptionalDouble NOTHING = OptionalDouble.empty();
  private static final SpecLimits SPEC =
      new SpecLimits(OptionalDouble.of(6), NOTHING, OptionalDouble.of(17));

  /** A lognormal distribution of median 10 and log-sigma 0.15; percentiles 10 exp(-+0.45). */
  @Test
  void indicesOfALognormalDistribution() {
    PercentileIndices indices =
        new PercentileIndices(
            10 * Math.exp(-0.45), 10, 10 * Math.exp(0.45), SPEC, PercentileMethod.LOGNORMAL);

    assertThat(indices.pp().getAsDouble()).isCloseTo(1.181926368101364, within(1e-12));
    assertThat(indices.ppu().getAsDouble()).isCloseTo(1.2317173868025544, within(1e-12));
    assertThat(indices.ppl().getAsDouble()).isCloseTo(1.103838506744318, within(1e-12));
    assertThat(indices.ppk()).isEqualTo(indices.ppl());
  }

  /** Logarithms in the shape of the normal distribution, with their own standard deviation. */
  @Test
  void lessThanAThousandSkewedReadingsAreFittedByALognormal() {
    PercentileIndices indices = PercentileIndices.of(lognormal(999), SPEC).orElseThrow();

    assertThat(indices.method()).isEqualTo(PercentileMethod.LOGNORMAL);
    assertThat(indices.medianUm()).isCloseTo(10, within(1e-10));
    assertThat(indices.lowUm()).isCloseTo(6.376281516217735, withinPercentage(0.5));
    assertThat(indices.highUm()).isCloseTo(15.683121854901694, withinPercentage(0.5));
  }

  /** The 1.68th of 1000: place 1/3 + 0.00135 x 1000.33, between the first two readings. */
  @Test
  void aThousandReadingsSpeakForThemselves() {
    double[] readings = IntStream.rangeClosed(1, 1000).mapToDouble(i -> i).toArray();
    PercentileIndices indices = PercentileIndices.of(readings, SPEC).orElseThrow();
    double place = 1 / 3.0 + Normal.STANDARD.below(-3) * (1000 + 1 / 3.0);

    assertThat(indices.method()).isEqualTo(PercentileMethod.EMPIRICAL);
    assertThat(indices.method().words()).contains("ordered readings");
    assertThat(indices.medianUm()).isCloseTo(500.5, within(1e-9));
    assertThat(indices.lowUm()).isCloseTo(place, within(1e-9));
    assertThat(indices.highUm()).isCloseTo(1001 - place, within(1e-9));
  }

  /** Cubes of what is normal: the power 1/3 makes them so, the logarithm does not. */
  @Test
  void aPowerIsFoundWhereALogarithmDoesNotFit() {
    double[] cubes =
        IntStream.range(0, 400).mapToDouble(i -> Math.pow(4 + score(i, 400), 3)).toArray();
    PercentileIndices indices = PercentileIndices.of(cubes, SPEC).orElseThrow();

    assertThat(indices.method()).isEqualTo(PercentileMethod.BOX_COX);
    assertThat(indices.medianUm()).isCloseTo(64, withinPercentage(1));
    assertThat(indices.highUm()).isCloseTo(343, withinPercentage(3));
  }

  /** Weights of eleven men; the power by a general-purpose library, to 1e-4 there. */
  @Test
  void thePowerOfGreatestLikelihood() {
    double[] weights = {148, 154, 158, 160, 161, 162, 166, 170, 182, 195, 236};
    BoxCox power = BoxCox.fit(weights);

    assertThat(power.lambda()).isCloseTo(-5.379782626117338, within(1e-4));
    assertThat(power.logLikelihood()).isCloseTo(-31.21985126313035, within(1e-8));
    assertThat(power.reading(power.transformed(195)).getAsDouble()).isCloseTo(195, within(1e-9));
  }

  @Test
  void twoHeapsAreFittedByNothing() {
    double[] heaps = IntStream.range(0, 200).mapToDouble(i -> i % 2 * 5 + 10 + i / 400.0).toArray();

    assertThat(PercentileIndices.of(heaps, SPEC)).isEmpty();
  }

  @Test
  void whatCannotBeFittedHasNoPercentiles() {
    double[] withZero = lognormal(50);
    withZero[0] = 0;

    assertThat(PercentileIndices.of(withZero, SPEC)).isEmpty();
    assertThat(PercentileIndices.of(lognormal(7), SPEC)).isEmpty();
    assertThat(PercentileIndices.of(new double[] {3, 3, 3, 3, 3, 3, 3, 3, 3}, SPEC)).isEmpty();
  }

  @Test
  void oneLimitHasOneIndex() {
    SpecLimits lower = new SpecLimits(OptionalDouble.of(6), NOTHING, NOTHING);
    PercentileIndices indices = PercentileIndices.of(lognormal(200), lower).orElseThrow();

    assertThat(indices.pp()).isEmpty();
    assertThat(indices.ppu()).isEmpty();
    assertThat(indices.ppk()).isEqualTo(indices.ppl()).isPresent();
  }

  /** All equal: no spread, no index, no division by zero. */
  @Test
  void aThousandEqualReadingsHaveNoIndex() {
    double[] equal = new double[1000];
    Arrays.fill(equal, 10);
    PercentileIndices indices = PercentileIndices.of(equal, SPEC).orElseThrow();

    assertThat(indices.pp()).isEmpty();
    assertThat(indices.ppk()).isEmpty();
  }

  private static double[] lognormal(int n) {
    return IntStream.range(0, n).mapToDouble(i -> 10 * Math.exp(0.15 * score(i, n))).toArray();
  }

  private static double score(int i, int n) {
    return Normal.STANDARD.quantile((i + 0.5) / n);
  }
}
