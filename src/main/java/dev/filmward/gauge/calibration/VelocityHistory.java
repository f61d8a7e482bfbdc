package dev.filmward.gauge.calibration;

import dev.filmward.stats.ChiSquare;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Velocities that were found for the same layer at different times, taken together: whether they
 * are one velocity within their uncertainties. Values of uncertainty 0 are left out. Immutable.
 *
 * <p>Weighted mean with weights 1/u², chi-square of homogeneity with n - 1 degrees of freedom, and
 * the Birge ratio sqrt(chi-square / (n - 1)), which is about 1 where the uncertainties tell all of
 * the scatter. Source: R. T. Birge, Phys. Rev. 40 (1932) 207 (from memory).
 *
 * @param count values taken together
 * @param meanMps weighted mean, m/s; empty where there are none
 * @param uMeanMps its standard uncertainty from those of the values
 * @param chiSquare of the values about the mean; empty below two values
 */
public record VelocityHistory(
    int count, OptionalDouble meanMps, OptionalDouble uMeanMps, OptionalDouble chiSquare) {
  private static final double LEVEL = 0.05;

  /** Takes what calibrations found together. */
  public static VelocityHistory of(List<FittedVelocity> found) {
    double weight = 0;
    double weighted = 0;
    int count = 0;
    for (FittedVelocity each : found) {
      if (each.uMps() > 0) {
        double w = 1 / (each.uMps() * each.uMps());
        weight += w;
        weighted += w * each.velocity().mps();
        count++;
      }
    }
    if (count == 0) {
      return new VelocityHistory(
          0, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    }
    double mean = weighted / weight;
    return new VelocityHistory(
        count,
        OptionalDouble.of(mean),
        OptionalDouble.of(1 / Math.sqrt(weight)),
        count < 2 ? OptionalDouble.empty() : OptionalDouble.of(squares(found, mean)));
  }

  private static double squares(List<FittedVelocity> found, double mean) {
    double squares = 0;
    for (FittedVelocity each : found) {
      if (each.uMps() > 0) {
        double z = (each.velocity().mps() - mean) / each.uMps();
        squares += z * z;
      }
    }
    return squares;
  }

  /** The Birge ratio. */
  public OptionalDouble birge() {
    return chiSquare.isPresent()
        ? OptionalDouble.of(Math.sqrt(chiSquare.getAsDouble() / (count - 1)))
        : OptionalDouble.empty();
  }

  /** The chance of such a scatter or a wider one if the velocity never changed. */
  public OptionalDouble chance() {
    return chiSquare.isPresent()
        ? OptionalDouble.of(new ChiSquare(count - 1).above(chiSquare.getAsDouble()))
        : OptionalDouble.empty();
  }

  /** Whether it wanders more than its uncertainty says; false where that cannot be told. */
  public boolean wanders() {
    return chance().isPresent() && chance().getAsDouble() < LEVEL;
  }
}
