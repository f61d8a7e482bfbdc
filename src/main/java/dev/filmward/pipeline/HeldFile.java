package dev.filmward.pipeline;

import dev.filmward.intake.LooseRows;
import dev.filmward.store.FileEntry;
import dev.filmward.store.HeldRow;
import java.util.List;
import java.util.Optional;

/**
 * A file with the rows of it that are held in quarantine.
 *
 * @param heading what stands before its rows; empty where that was not kept
 * @param reader reads its rows by themselves; empty where that cannot be done
 * @param obstacle why its rows cannot be mended; empty where they can
 * @param rows the first of them, in the order of the file
 */
public record HeldFile(
    FileEntry entry,
    String heading,
    Optional<LooseRows> reader,
    String obstacle,
    List<HeldRow> rows) {
  public HeldFile {
    rows = List.copyOf(rows);
  }
}
