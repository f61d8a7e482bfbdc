package dev.filmward.simulate;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * How strongly an event acts on each reported layer: 1 fully, 0 not at all, and in between where
 * only some of the layers that are reported together are concerned. Immutable.
 *
 * @param weights one for each reported layer, outer face first
 */
record Reach(List<Double> weights) {

  Reach {
    weights = List.copyOf(weights);
    if (weights.stream().allMatch(weight -> weight == 0)) {
      throw new IllegalArgumentException("the event reaches no layer");
    }
  }

  static Reach everywhere(Structure structure) {
    return of(structure, layer -> true);
  }

  static Reach layer(Structure structure, String name) {
    return of(structure, layer -> layer.name().equals(name));
  }

  /** All layers that an extruder feeds. */
  static Reach extruder(Structure structure, String extruder) {
    return of(structure, layer -> layer.extruder().equals(Optional.of(extruder)));
  }

  double weight(int position) {
    return weights.get(position - 1);
  }

  private static Reach of(Structure structure, Predicate<Layer> concerned) {
    return new Reach(
        structure.reported().stream().map(layer -> shareOf(layer, concerned)).toList());
  }

  private static double shareOf(ReportedLayer reported, Predicate<Layer> concerned) {
    double all = 0;
    double part = 0;
    for (Layer layer : reported.members()) {
      double targetUm = layer.individual().target().orElseThrow();
      all += targetUm;
      part += concerned.test(layer) ? targetUm : 0;
    }
    return part / all;
  }
}
