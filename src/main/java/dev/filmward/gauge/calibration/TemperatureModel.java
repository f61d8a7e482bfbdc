package dev.filmward.gauge.calibration;

/**
 * How a velocity follows the temperature near the one at which it was found: {@code c(T) = c (1 +
 * coefficient (T - at) / 100)}. Linear, so good for some kelvin around it, and not across a change
 * of phase. Immutable.
 *
 * @param atC temperature of the film at the calibration, degrees Celsius
 * @param percentPerKelvin change of the velocity, percent by kelvin; below 0 for polymers (PE -0.3
 *     to -0.5, from memory)
 */
public record TemperatureModel(double atC, double percentPerKelvin) {
  private static final double LEAST_C = -100;
  private static final double GREATEST_C = 300;
  private static final double STEEPEST = 5;

  public TemperatureModel {
    if (!(atC >= LEAST_C && atC <= GREATEST_C)) {
      throw new IllegalArgumentException(
          "a temperature of film is in degrees Celsius, -100 to 300, not " + atC);
    }
    if (!(Math.abs(percentPerKelvin) <= STEEPEST)) {
      throw new IllegalArgumentException(
          "a coefficient of velocity is in percent by kelvin, -5 to 5 (-0.4 for PE), not "
              + percentPerKelvin);
    }
  }

  /**
   * What a thickness at the velocity of the calibration is to be multiplied by, where the film had
   * another temperature: time of flight stays, so thickness goes as velocity.
   */
  public double factor(double celsius) {
    return 1 + percentPerKelvin * (celsius - atC) / 100;
  }
}
