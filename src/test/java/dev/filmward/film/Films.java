package dev.filmward.film;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Invented structures for tests. */
public final class Films {
  private Films() {}

  /** Layers named Layer 1, Layer 2 and so on, each reported by itself, without limits. */
  public static Structure fedBy(String code, String... extruders) {
    List<Layer> layers = new ArrayList<>();
    List<ReportedLayer> reported = new ArrayList<>();
    for (String extruder : extruders) {
      Layer layer =
          new Layer(
              "Layer " + (layers.size() + 1),
              Role.CORE,
              Optional.empty(),
              SpecLimits.NONE,
              SpecLimits.NONE,
              OptionalDouble.empty(),
              Optional.of(extruder),
              OptionalDouble.empty(),
              OptionalDouble.empty());
      layers.add(layer);
      reported.add(
          new ReportedLayer(
              layers.size(), layer.name(), List.of(layer), SpecLimits.NONE, SpecLimits.NONE));
    }
    return new Structure(code, "Film", layers, reported, SpecLimits.NONE, SpecLimits.NONE);
  }
}
