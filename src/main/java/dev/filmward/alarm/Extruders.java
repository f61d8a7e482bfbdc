package dev.filmward.alarm;

import dev.filmward.film.Layer;
import dev.filmward.film.Structure;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Which reported layers are fed by the same extruder and so move together. */
final class Extruders {
  private final List<Set<String>> byPosition;

  Extruders(Structure structure) {
    this.byPosition =
        structure.reported().stream()
            .map(
                layer ->
                    layer.members().stream()
                        .map(Layer::extruder)
                        .flatMap(Optional::stream)
                        .collect(Collectors.toUnmodifiableSet()))
            .toList();
  }

  boolean share(int position, int other) {
    return position >= 1
        && other >= 1
        && !Collections.disjoint(byPosition.get(position - 1), byPosition.get(other - 1));
  }
}
