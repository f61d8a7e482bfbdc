package dev.filmward.gauge.echo;

import dev.filmward.film.Layer;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of the sound in one layer: velocity and density from the structure where it gives
 * them, else the values to start from of its resin's family, else nothing. Immutable.
 *
 * @param family of its resin, where that is known
 */
public record LayerSound(Layer layer, Optional<Resin> family) {
  private static final double KGM3_PER_GCM3 = 1000;

  public static LayerSound of(Layer layer) {
    return new LayerSound(layer, layer.resin().flatMap(Resins.builtIn()::named));
  }

  public OptionalDouble velocityMps() {
    return layer.velocityMps().isPresent()
        ? layer.velocityMps()
        : number(family.map(resin -> resin.velocityMps().start()));
  }

  public OptionalDouble densityKgm3() {
    return layer.densityGcm3().isPresent()
        ? OptionalDouble.of(layer.densityGcm3().getAsDouble() * KGM3_PER_GCM3)
        : number(family.map(Resin::densityKgm3));
  }

  public Origin velocityOrigin() {
    return origin(layer.velocityMps());
  }

  public Origin densityOrigin() {
    return origin(layer.densityGcm3());
  }

  /** Empty where its velocity or density is not known. */
  public Optional<Medium> medium() {
    return velocityMps().isPresent() && densityKgm3().isPresent()
        ? Optional.of(
            new Medium(layer.name(), velocityMps().getAsDouble(), densityKgm3().getAsDouble()))
        : Optional.empty();
  }

  /**
   * The target, else the middle of the individual limits, um; empty where there is neither. That is
   * what the layer is meant to be, so it is what a gauge is set up for.
   */
  public OptionalDouble nominalUm() {
    var limits = layer.individual();
    if (limits.target().isPresent() || limits.lower().isEmpty() || limits.upper().isEmpty()) {
      return limits.target();
    }
    return OptionalDouble.of((limits.lower().getAsDouble() + limits.upper().getAsDouble()) / 2);
  }

  private Origin origin(OptionalDouble given) {
    if (given.isPresent()) {
      return Origin.STRUCTURE;
    }
    return family.isPresent() ? Origin.STARTING_VALUE : Origin.UNKNOWN;
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.map(OptionalDouble::of).orElseGet(OptionalDouble::empty);
  }
}
