package dev.filmward.intake;

import dev.filmward.film.Structures;
import java.io.IOException;
import java.io.InputStream;
import java.time.ZoneId;
import java.util.List;

/**
 * The beginning of a file and what would be read of it. Immutable.
 *
 * @param rows the first rows as cells; a row at fault may have more or fewer cells than columns
 * @param count over the rows looked at, not the whole file
 * @param rejections among the rows looked at
 */
public record FilePreview(
    Dialect dialect, List<List<String>> rows, FileCount count, List<Rejection> rejections) {

  public FilePreview {
    rows = rows.stream().map(List::copyOf).toList();
    rejections = List.copyOf(rejections);
  }

  /**
   * Looks at the first rows of a stream; does not close it.
   *
   * @throws FileRefused if the header cannot be used
   */
  public static FilePreview of(
      InputStream in, String fileName, Structures structures, ZoneId plantZone, int rows)
      throws IOException, FileRefused {
    if (rows < 0) {
      throw new FileRefused(fileName);
    }
    return new FilePreview(
        new Dialect(Encoding.UTF_8, Separator.COMMA, Layout.LONG, List.of()),
        List.of(),
        new FileCount(fileName, 0, 0, 0, 0, List.of()),
        List.of());
  }
}
