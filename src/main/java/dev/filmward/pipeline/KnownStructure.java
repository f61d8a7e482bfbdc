package dev.filmward.pipeline;

import dev.filmward.film.Structure;
import dev.filmward.store.SampleTable.Production;
import java.util.List;
import java.util.Optional;

/**
 * A structure with all its versions, and where it was made.
 *
 * @param versions oldest first, at least one
 * @param takeBack the number of the version that may be taken back now
 */
public record KnownStructure(
    String code,
    List<StructureVersion> versions,
    List<Production> made,
    Optional<Integer> takeBack) {

  public KnownStructure {
    versions = List.copyOf(versions);
    made = List.copyOf(made);
    if (versions.isEmpty()) {
      throw new IllegalArgumentException("structure " + code + " has no version");
    }
  }

  /** The version that holds; empty where its first one is still to come. */
  public Optional<StructureVersion> inForce() {
    return versions.stream()
        .filter(version -> version.standing() == StructureVersion.Standing.IN_FORCE)
        .findFirst();
  }

  public StructureVersion newest() {
    return versions.get(versions.size() - 1);
  }

  /** The version that holds, else the newest one. */
  public StructureVersion shown() {
    return inForce().orElseGet(this::newest);
  }

  public long samples() {
    return made.stream().mapToLong(Production::samples).sum();
  }

  /** Whether readings so far would not fit another structure under this code. */
  boolean isMadeOtherwiseThan(Structure other) {
    return samples() > 0 && shown().structure().reported().size() != other.reported().size();
  }
}
