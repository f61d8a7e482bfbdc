package dev.filmward.gauge.uncertainty;

/**
 * One thing that the result depends on. Immutable.
 *
 * @param unit of the quantity
 * @param sensitivity change of the result with the quantity, result's unit per its unit (JCGM 100,
 *     5.1.3)
 */
public record Component(String name, String unit, Uncertain input, double sensitivity) {

  public Component {
    if (!Double.isFinite(sensitivity)) {
      throw new IllegalArgumentException(name + ": the sensitivity must be finite");
    }
  }

  /** What it gives to the result, as a standard uncertainty in the result's unit. */
  public double contribution() {
    return Math.abs(sensitivity) * input.standard();
  }
}
