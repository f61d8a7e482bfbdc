package dev.filmward.capability;

import dev.filmward.film.SpecLimits;
import dev.filmward.stats.AndersonDarling;
import dev.filmward.stats.Moments;
import dev.filmward.stats.Normal;
import dev.filmward.stats.QuantileRule;
import dev.filmward.stats.SampleQuantiles;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;

/**
 * Takes readings, gives percentile indices by the first method that can carry them: from 1000
 * readings on the ordered readings themselves; with fewer, which do not reach to 0.135 %, a
 * lognormal distribution if the logarithms pass the test of Anderson and Darling at 5 %, or else
 * the Box-Cox power if what it makes passes. Nothing where neither fits, or for fewer than 8
 * readings, all equal, or not all above zero.
 *
 * <p>The test is kind to a power chosen to please it. A mixture of lanes that differ is not mended
 * by any of them. Source: ISO 22514-2; {@link BoxCox}; quantiles of readings by {@link
 * QuantileRule#MEDIAN_RANK}.
 */
final class Percentiles {
  static final int ENOUGH_READINGS = 1000;

  private static final int FEWEST = 8;
  private static final double SIGNIFICANCE = 0.05;
  private static final double TAIL = Normal.STANDARD.below(-3);

  private final double[] readings;
  private final SpecLimits spec;

  private Percentiles(double[] readings, SpecLimits spec) {
    this.readings = readings;
    this.spec = spec;
  }

  static Optional<PercentileIndices> indices(double[] readings, SpecLimits spec) {
    Percentiles percentiles = new Percentiles(readings, spec);
    if (readings.length >= ENOUGH_READINGS) {
      return Optional.of(percentiles.empirical());
    }
    boolean differ = Arrays.stream(readings).distinct().limit(2).count() == 2;
    boolean positive = Arrays.stream(readings).allMatch(reading -> reading > 0);
    return readings.length < FEWEST || !differ || !positive
        ? Optional.empty()
        : percentiles.lognormal().or(percentiles::powered);
  }

  private PercentileIndices empirical() {
    SampleQuantiles ordered = new SampleQuantiles();
    Arrays.stream(readings).forEach(ordered::add);
    return new PercentileIndices(
        ordered.at(TAIL, QuantileRule.MEDIAN_RANK),
        ordered.at(0.5, QuantileRule.MEDIAN_RANK),
        ordered.at(1 - TAIL, QuantileRule.MEDIAN_RANK),
        spec,
        PercentileMethod.EMPIRICAL);
  }

  private Optional<PercentileIndices> lognormal() {
    return fitted(PercentileMethod.LOGNORMAL, Math::log, log -> OptionalDouble.of(Math.exp(log)));
  }

  private Optional<PercentileIndices> powered() {
    BoxCox power = BoxCox.fit(readings);
    return fitted(PercentileMethod.BOX_COX, power::transformed, power::reading);
  }

  private Optional<PercentileIndices> fitted(
      PercentileMethod method, DoubleUnaryOperator there, DoubleFunction<OptionalDouble> back) {
    double[] normal = Arrays.stream(readings).map(there).toArray();
    if (AndersonDarling.of(normal).p() < SIGNIFICANCE) {
      return Optional.empty();
    }
    Moments moments = new Moments();
    Arrays.stream(normal).forEach(moments::add);
    double mean = moments.mean();
    double reach = 3 * moments.standardDeviation().orElseThrow();
    OptionalDouble low = back.apply(mean - reach);
    OptionalDouble high = back.apply(mean + reach);
    double median = back.apply(mean).orElseThrow();
    return low.isEmpty() || high.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new PercentileIndices(low.getAsDouble(), median, high.getAsDouble(), spec, method));
  }
}
