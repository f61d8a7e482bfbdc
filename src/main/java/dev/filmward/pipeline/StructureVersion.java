package dev.filmward.pipeline;

import dev.filmward.film.Structure;
import dev.filmward.store.StructureTable.KeptFile;
import java.util.List;

/**
 * A structure as one file gave it.
 *
 * @param number from 1 for each code, in the order in which they were given
 * @param changes against the version before; of the first one none
 */
public record StructureVersion(
    int number,
    Standing standing,
    Structure structure,
    KeptFile file,
    List<StructureChange> changes) {

  public StructureVersion {
    changes = List.copyOf(changes);
  }

  /** Whether it holds now. */
  public enum Standing {
    IN_FORCE("in-force"),
    PLANNED("planned"),
    PAST("past");

    private final String word;

    Standing(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }
}
