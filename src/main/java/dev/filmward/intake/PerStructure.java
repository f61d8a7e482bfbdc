package dev.filmward.intake;

import dev.filmward.film.Structure;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;

/**
 * Keeps what was worked out for each structure, so that it is worked out once. There are as many as
 * structures are known, however long a file is. One owner, one thread.
 */
final class PerStructure<T> {
  private final Function<Structure, T> make;
  private final Map<String, T> byCode = new HashMap<>();

  PerStructure(Function<Structure, T> make) {
    this.make = make;
  }

  T of(Structure structure) {
    T known = byCode.get(structure.code());
    if (known == null) {
      known = make.apply(structure);
      byCode.put(structure.code(), known);
    }
    return known;
  }
}
