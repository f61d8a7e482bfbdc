package dev.filmward.film;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** The structures that are known, by code, in the order in which they were given. Immutable. */
public final class Structures {
  private final Map<String, Structure> byCode;

  /**
   * Keeps structures by their codes.
   *
   * @throws IllegalArgumentException if two have the same code
   */
  public Structures(Collection<Structure> structures) {
    Map<String, Structure> map = new LinkedHashMap<>();
    for (Structure structure : structures) {
      if (map.put(structure.code(), structure) != null) {
        throw new IllegalArgumentException(
            "two structures have the code \"" + structure.code() + "\"");
      }
    }
    this.byCode = map;
  }

  public Optional<Structure> find(String code) {
    return Optional.ofNullable(byCode.get(code));
  }

  public Collection<Structure> all() {
    return byCode.values();
  }
}
