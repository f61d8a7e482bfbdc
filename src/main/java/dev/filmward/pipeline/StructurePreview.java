package dev.filmward.pipeline;

import dev.filmward.film.Structure;
import java.util.List;

/**
 * What a structures file would change.
 *
 * @param yaml the structures in it as a file, written evenly
 */
public record StructurePreview(List<Entry> entries, String yaml) {
  public StructurePreview {
    entries = List.copyOf(entries);
  }

  /**
   * One structure of the file.
   *
   * @param samples so many were taken of it so far
   * @param otherLayers whether it has another number of reported layers than those samples
   */
  public record Entry(
      Structure structure,
      State state,
      List<StructureChange> changes,
      long samples,
      boolean otherLayers) {
    public Entry {
      changes = List.copyOf(changes);
    }
  }

  /** What it is to the structure of that code. */
  public enum State {
    NEW("new"),
    CHANGED("changed"),
    SAME("same");

    private final String word;

    State(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }
}
