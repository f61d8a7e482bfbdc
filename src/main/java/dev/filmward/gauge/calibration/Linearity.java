package dev.filmward.gauge.calibration;

import dev.filmward.stats.WeightedLineSum;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How the bias of a gauge changes with thickness, by weighted least squares through the biases of
 * standards of two thicknesses or more. Immutable.
 *
 * @param slope um of bias by um of thickness; empty where it cannot be told
 * @param standardError of the slope
 */
public record Linearity(OptionalDouble slope, OptionalDouble standardError) {
  private static final Linearity UNKNOWN =
      new Linearity(OptionalDouble.empty(), OptionalDouble.empty());

  /** A bias at a thickness. */
  public record At(double thicknessUm, CheckChart.Bias bias) {}

  public static Linearity of(List<At> biases) {
    WeightedLineSum line = new WeightedLineSum();
    for (At at : biases) {
      OptionalDouble u = at.bias.standardUm();
      if (u.isPresent() && u.getAsDouble() > 0) {
        double weight = 1 / (u.getAsDouble() * u.getAsDouble());
        line.add(at.thicknessUm, at.bias.um().orElseThrow(), weight);
      }
    }
    long places = biases.stream().mapToDouble(At::thicknessUm).distinct().count();
    return line.points() < 2 || places < 2
        ? UNKNOWN
        : new Linearity(
            OptionalDouble.of(line.slope()), OptionalDouble.of(Math.sqrt(line.varianceOfSlope())));
  }

  /** Whether the bias changes with thickness by more than chance; false where unknown. */
  public boolean isReal() {
    return slope.isPresent()
        && standardError.isPresent()
        && Math.abs(slope.getAsDouble()) > 2 * standardError.getAsDouble();
  }
}
