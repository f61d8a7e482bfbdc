package dev.filmward.gauge.uncertainty;

import dev.filmward.gauge.echo.GaugedLayer;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The uncertainty of one reported layer. Immutable.
 *
 * @param basis what the uncertainty of the velocity is taken from, in words
 * @param budget empty where something is not known that it cannot do without
 * @param question what to ask or to give; empty where nothing is missing
 */
public record LayerBudget(
    GaugedLayer layer, String basis, Optional<Budget> budget, String question) {

  /**
   * The standard deviation of readings one after the other of one place, as far as timing makes it,
   * um; empty where the velocity is not known.
   */
  public OptionalDouble repeatabilityUm(LayerModel.Conditions conditions) {
    return layer.velocityMps().isPresent()
        ? OptionalDouble.of(conditions.timingUm(layer.velocityMps().getAsDouble()))
        : OptionalDouble.empty();
  }
}
