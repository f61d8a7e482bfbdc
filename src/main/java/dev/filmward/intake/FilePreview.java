package dev.filmward.intake;

import dev.filmward.film.ReadingSink;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/**
 * The beginning of a file and what would be read of it. Immutable.
 *
 * @param rows the first rows as cells, long ones cut; a row at fault may have fewer cells than
 *     there are columns, or one more
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
   * @param rows how many rows to look at
   * @throws FileRefused if the header cannot be used
   */
  public static FilePreview of(
      InputStream in, String fileName, Structures structures, ZoneId plantZone, int rows)
      throws IOException, FileRefused {
    List<Rejection> rejections = new ArrayList<>();
    FileHead head = new ReadingsParser(structures, plantZone).head(in, fileName);
    FileRun run = head.run(Nowhere.INSTANCE, rejections::add);
    List<List<String>> cells = new ArrayList<>();
    while (cells.size() < rows && run.next()) {
      cells.add(run.cells().stream().map(Words::cut).toList());
      run.take();
    }
    return new FilePreview(
        run.dialect(), cells, head.count(run.counts(), run.oddities()), rejections);
  }

  /** Takes readings that nobody needs. */
  private enum Nowhere implements ReadingSink {
    INSTANCE;

    @Override
    public void reading(
        SampleKey key, Instant takenAt, Structure structure, int position, int lane, double um) {}

    @Override
    public void missing(
        SampleKey key, Instant takenAt, Structure structure, int position, int lane) {}
  }
}
