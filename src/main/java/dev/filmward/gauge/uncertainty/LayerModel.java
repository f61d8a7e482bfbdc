package dev.filmward.gauge.uncertainty;

import java.util.ArrayList;
import java.util.List;

/**
 * A thickness by pulse-echo, {@code t = v(T) (tau - tau0) / 2}, and how it hangs on each part.
 * Immutable.
 *
 * <p>Sensitivities are the model's derivatives: to velocity {@code t / v}, to temperature {@code t
 * / v} times the velocity's change with it, to the time of flight {@code v / 2}, to the zero the
 * same in the first layer and nothing in others, whose two echoes both come after it. In um, ns and
 * m/s {@code t = v tau / 2000}.
 *
 * @param velocity its uncertainty, m/s
 * @param kelvinMps change of the velocity with temperature, m/s per K
 * @param place whether the couplant is at this layer
 */
public record LayerModel(
    double thicknessUm, double velocityMps, Uncertain velocity, double kelvinMps, Place place) {
  private static final double MPS_IN_UM_PER_NS = 2000;

  /** Where a layer lies. */
  public enum Place {
    FIRST,
    FURTHER_IN
  }

  /**
   * What holds for all layers.
   *
   * @param temperatureK half-width of what the film's temperature may be off, K (rectangular)
   * @param timing of the time between two echoes of one shot, ns
   * @param zero of the zero with what the couplant does to it, ns
   * @param shots that are averaged; they make the timing better and nothing else
   */
  public record Conditions(double temperatureK, Uncertain timing, Uncertain zero, int shots) {
    private static final int MOST_SHOTS = 1_000_000;

    public Conditions {
      if (!(temperatureK >= 0) || !Double.isFinite(temperatureK)) {
        throw new IllegalArgumentException(
            "temperature is a half-width in K, zero or more, not " + temperatureK);
      }
      if (shots < 1 || shots > MOST_SHOTS) {
        throw new IllegalArgumentException("shots are from 1 to a million, not " + shots);
      }
    }

    /** What timing alone does to a thickness, one standard deviation, um. */
    double timingUm(double velocityMps) {
      return timing.ofMean(shots).standard() * velocityMps / MPS_IN_UM_PER_NS;
    }
  }

  public LayerModel {
    if (!(thicknessUm > 0) || !(velocityMps > 0) || !Double.isFinite(thicknessUm * velocityMps)) {
      throw new IllegalArgumentException(
          "thickness and velocity are above zero, not " + thicknessUm + ", " + velocityMps);
    }
    if (!Double.isFinite(kelvinMps)) {
      throw new IllegalArgumentException("the change with temperature must be finite");
    }
  }

  /** Velocity, temperature, timing, and the zero in the first layer. */
  public Budget budget(Conditions conditions, Coverage coverage) {
    double toVelocity = thicknessUm / velocityMps;
    double toTime = velocityMps / MPS_IN_UM_PER_NS;
    List<Component> parts = new ArrayList<>();
    parts.add(new Component("velocity", "m/s", velocity, toVelocity));
    parts.add(
        new Component(
            "temperature",
            "K",
            Uncertain.rectangular(conditions.temperatureK()),
            toVelocity * kelvinMps));
    parts.add(
        new Component("timing", "ns", conditions.timing().ofMean(conditions.shots()), toTime));
    if (place == Place.FIRST) {
      parts.add(new Component("couplant and zero", "ns", conditions.zero(), -toTime));
    }
    return new Budget(parts, coverage);
  }
}
