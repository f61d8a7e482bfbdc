package dev.filmward.simulate;

import dev.filmward.film.Layer;
import dev.filmward.film.Role;
import dev.filmward.film.SpecLimits;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A layer being written down, one property after the other; what is not said is left out. Lengths
 * in um. Immutable: each call gives a new draft.
 */
record LayerDraft(Layer layer) {

  static LayerDraft of(String name, Role role, String resin) {
    return new LayerDraft(
        new Layer(
            name,
            role,
            Optional.of(resin),
            SpecLimits.NONE,
            SpecLimits.NONE,
            OptionalDouble.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty()));
  }

  LayerDraft individual(double lower, double target, double upper) {
    return with(SpecLimits.of(lower, target, upper), layer.average());
  }

  /** A target and a least thickness, without an upper limit. */
  LayerDraft atLeast(double lower, double target) {
    return with(
        new SpecLimits(OptionalDouble.of(lower), OptionalDouble.of(target), OptionalDouble.empty()),
        layer.average());
  }

  LayerDraft average(double lower, double upper) {
    return with(
        layer.individual(),
        new SpecLimits(OptionalDouble.of(lower), OptionalDouble.empty(), OptionalDouble.of(upper)));
  }

  LayerDraft averageAtLeast(double lower) {
    return with(
        layer.individual(),
        new SpecLimits(OptionalDouble.of(lower), OptionalDouble.empty(), OptionalDouble.empty()));
  }

  LayerDraft extruded(String extruder, double densityGcm3) {
    return new LayerDraft(
        new Layer(
            layer.name(),
            layer.role(),
            layer.resin(),
            layer.individual(),
            layer.average(),
            OptionalDouble.of(densityGcm3),
            Optional.of(extruder),
            layer.velocityMps(),
            layer.greatestUm()));
  }

  LayerDraft heard(double velocityMps, double greatestUm) {
    return new LayerDraft(
        new Layer(
            layer.name(),
            layer.role(),
            layer.resin(),
            layer.individual(),
            layer.average(),
            layer.densityGcm3(),
            layer.extruder(),
            OptionalDouble.of(velocityMps),
            OptionalDouble.of(greatestUm)));
  }

  private LayerDraft with(SpecLimits individual, SpecLimits average) {
    return new LayerDraft(
        new Layer(
            layer.name(),
            layer.role(),
            layer.resin(),
            individual,
            average,
            layer.densityGcm3(),
            layer.extruder(),
            layer.velocityMps(),
            layer.greatestUm()));
  }
}
