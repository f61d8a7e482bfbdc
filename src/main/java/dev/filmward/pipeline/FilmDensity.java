package dev.filmward.pipeline;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Layer;
import dev.filmward.film.Structure;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The density of a reported layer or of the whole film in g/cm3: that of its layers, weighted by
 * their target thicknesses. Empty where one of them has no density or, among several, no target.
 */
public final class FilmDensity {
  private FilmDensity() {}

  public static OptionalDouble of(Structure structure, Characteristic characteristic) {
    return switch (characteristic.kind()) {
      case LAYER -> of(structure.reported().get(characteristic.position() - 1).members());
      case TOTAL -> of(structure.layers());
      case SHARE -> OptionalDouble.empty();
    };
  }

  private static OptionalDouble of(List<Layer> layers) {
    if (layers.size() == 1) {
      return layers.get(0).densityGcm3();
    }
    double mass = 0;
    double thickness = 0;
    for (Layer layer : layers) {
      if (layer.densityGcm3().isEmpty() || layer.individual().target().isEmpty()) {
        return OptionalDouble.empty();
      }
      double targetUm = layer.individual().target().getAsDouble();
      mass += targetUm * layer.densityGcm3().getAsDouble();
      thickness += targetUm;
    }
    return thickness > 0 ? OptionalDouble.of(mass / thickness) : OptionalDouble.empty();
  }
}
