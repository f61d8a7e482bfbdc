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
import java.util.OptionalDouble;

/**
 * The beginning of a file and what would be read of it. Immutable.
 *
 * @param rows the first rows as cells, long ones cut; a row at fault may have fewer cells than
 *     there are columns, or one more
 * @param read what each of the rows gives
 * @param count over the rows looked at, not the whole file
 * @param rejections among the rows looked at
 */
public record FilePreview(
    Dialect dialect,
    List<List<String>> rows,
    List<RowRead> read,
    FileCount count,
    List<Rejection> rejections) {

  public FilePreview {
    rows = rows.stream().map(List::copyOf).toList();
    read = List.copyOf(read);
    rejections = List.copyOf(rejections);
  }

  /**
   * What one row gives. Immutable.
   *
   * @param readings and places where nothing was measured, in the order of the columns
   * @param faults what could not be used, in words
   */
  public record RowRead(List<Place> readings, List<String> faults) {
    public RowRead {
      readings = List.copyOf(readings);
      faults = List.copyOf(faults);
    }
  }

  /**
   * A place for a reading.
   *
   * @param um empty where nothing was measured
   */
  public record Place(SampleKey key, Instant takenAt, String layer, int lane, OptionalDouble um) {}

  /**
   * Looks at the first rows of a stream; does not close it.
   *
   * @param rows how many rows to look at
   * @throws FileRefused if the header cannot be used
   */
  public static FilePreview of(
      InputStream in, String fileName, Structures structures, ZoneId plantZone, int rows)
      throws IOException, FileRefused {
    return of(new ReadingsParser(structures, plantZone), in, fileName, rows);
  }

  /**
   * Looks at the first rows of a stream as a parser would read them; does not close it.
   *
   * @param rows how many rows to look at
   * @throws FileRefused if the header cannot be used
   */
  public static FilePreview of(ReadingsParser parser, InputStream in, String fileName, int rows)
      throws IOException, FileRefused {
    List<Rejection> rejections = new ArrayList<>();
    Kept kept = new Kept();
    RowRun run = parser.head(in, fileName).rows(kept, rejections::add);
    List<List<String>> cells = new ArrayList<>();
    List<RowRead> read = new ArrayList<>();
    while (cells.size() < rows && run.next()) {
      cells.add(run.cells().stream().map(Words::cut).toList());
      int before = rejections.size();
      kept.places.clear();
      run.take();
      List<String> faults =
          rejections.subList(before, rejections.size()).stream().map(Rejection::reason).toList();
      read.add(new RowRead(kept.places, faults));
    }
    return new FilePreview(run.dialect(), cells, read, run.count(), rejections);
  }

  /** Keeps the places of a row. One owner, one thread. */
  private static final class Kept implements ReadingSink {
    private final List<Place> places = new ArrayList<>();

    @Override
    public void reading(
        SampleKey key, Instant takenAt, Structure structure, int position, int lane, double um) {
      places.add(new Place(key, takenAt, name(structure, position), lane, OptionalDouble.of(um)));
    }

    @Override
    public void missing(
        SampleKey key, Instant takenAt, Structure structure, int position, int lane) {
      places.add(new Place(key, takenAt, name(structure, position), lane, OptionalDouble.empty()));
    }

    private static String name(Structure structure, int position) {
      return structure.reported().get(position - 1).name();
    }
  }
}
