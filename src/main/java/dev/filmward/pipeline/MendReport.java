package dev.filmward.pipeline;

import dev.filmward.store.FileEntry;
import java.util.List;
import java.util.Optional;

/**
 * What became of rows that were submitted again. Immutable.
 *
 * @param file as which the mended ones came; empty where every row was refused again
 * @param mended how many rows were
 * @param still rows that are refused again and stay in quarantine
 */
public record MendReport(Optional<FileEntry> file, int mended, List<Still> still) {
  public MendReport {
    still = List.copyOf(still);
  }

  /**
   * A row that is refused again.
   *
   * @param line of the file it came in
   * @param reason why, in words
   */
  public record Still(long id, long line, String text, String reason) {}
}
