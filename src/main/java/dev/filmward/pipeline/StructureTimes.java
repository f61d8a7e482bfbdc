package dev.filmward.pipeline;

import dev.filmward.film.Characteristic;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.SpecTimes.Spec;
import dev.filmward.store.StructureTable.KeptFile;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The versions of a structure in the order in which they took hold, so that what was made is judged
 * by the one that held then. The first holds for all that came before it too. Immutable.
 */
public record StructureTimes(List<Held> versions) {
  public StructureTimes {
    versions = List.copyOf(versions);
    if (versions.isEmpty()) {
      throw new IllegalArgumentException("a structure has at least one version");
    }
  }

  /** A version, and since when it holds. */
  public record Held(Instant from, Structure structure) {}

  /** Of a structure that never changed. */
  static StructureTimes always(Structure structure) {
    return new StructureTimes(List.of(new Held(Instant.MIN, structure)));
  }

  /**
   * Of every structure, by its code. A version with another number of layers than the newest is
   * another film, whose samples are not charted beside it.
   *
   * @param taken structures files in the order in which they took hold
   */
  static Map<String, StructureTimes> of(List<KeptFile> taken) {
    Map<String, List<Held>> byCode = new LinkedHashMap<>();
    for (KeptFile file : taken) {
      Instant from = file.given().holdsFrom().orElse(file.given().receivedAt());
      for (Structure structure : StructureBook.readKept(file.file()).all()) {
        add(byCode.computeIfAbsent(structure.code(), code -> new ArrayList<>()), from, structure);
      }
    }
    Map<String, StructureTimes> times = new LinkedHashMap<>();
    byCode.forEach((code, versions) -> times.put(code, new StructureTimes(alike(versions))));
    return times;
  }

  private static void add(List<Held> versions, Instant from, Structure structure) {
    Optional<Held> last = versions.stream().reduce((first, second) -> second);
    if (last.filter(held -> held.structure().equals(structure)).isEmpty()) {
      versions.add(new Held(last.isEmpty() ? Instant.MIN : from, structure));
    }
  }

  private static List<Held> alike(List<Held> versions) {
    int layers = versions.get(versions.size() - 1).structure().reported().size();
    return versions.stream().filter(held -> held.structure().reported().size() == layers).toList();
  }

  public String code() {
    return versions.get(0).structure().code();
  }

  /** The version that held at a moment. */
  public Structure at(Instant moment) {
    Structure found = versions.get(0).structure();
    for (Held held : versions) {
      if (!held.from().isAfter(moment)) {
        found = held.structure();
      }
    }
    return found;
  }

  /** What was asked of a characteristic. */
  public SpecTimes specs(Characteristic characteristic) {
    List<Spec> specs = new ArrayList<>();
    for (Held held : versions) {
      SpecLimits individual = held.structure().spec(characteristic);
      SpecLimits average = held.structure().average(characteristic);
      boolean isFirst = specs.isEmpty();
      Spec spec =
          new Spec(isFirst ? Optional.empty() : Optional.of(held.from()), individual, average);
      if (isFirst || !specs.get(specs.size() - 1).asksAs(spec)) {
        specs.add(spec);
      }
    }
    return new SpecTimes(specs);
  }
}
