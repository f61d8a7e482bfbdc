package dev.filmward.intake;

import dev.filmward.film.ReadingSink;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Reads rows of a file by themselves, as text, with the head that was kept of the file. A row by
 * itself says all that it says within the file, but for lanes that a mapping counts, which {@link
 * #obstacle} tells, and for a local time that comes twice and is told by the order of the rows,
 * which is refused. For one thread.
 */
public final class LooseRows {
  private static final String MARK = "\uFEFF";

  private final KeptHead head;
  private final String fileName;
  private final Mappings mappings;
  private final ReadingsParser parser;
  private final Dialect dialect;

  /**
   * Opens the head.
   *
   * @param fileName of the file that the rows are from
   * @throws FileRefused if the head cannot be used, for example since a layer that it names is not
   *     known any more
   */
  public LooseRows(KeptHead head, String fileName, Structures structures, ZoneId plantZone)
      throws FileRefused {
    this.head = head;
    this.fileName = fileName;
    this.mappings = mappings(head, fileName);
    this.parser = new ReadingsParser(structures, plantZone, mappings);
    this.dialect = look("").run().dialect();
  }

  /**
   * What a row gives by itself.
   *
   * @param cells as they are read; fewer or more than headings where the row cannot be split
   * @param rows how many it is; a text may hold none, or several
   */
  public record Trial(List<String> cells, long rows, List<Rejection> rejections) {}

  /** Reads the head of a file of such rows. */
  public FileHead head(InputStream in) throws IOException, FileRefused {
    return parser.head(in, fileName);
  }

  public List<String> headings() {
    return dialect.columns().stream().map(Column::heading).toList();
  }

  public char separator() {
    return dialect.separator().sign();
  }

  /** Why no row of this file can be read by itself, where that is so. */
  public Optional<String> obstacle() {
    return mappings.all().stream()
        .map(mapping -> mapping.sources().get(Field.LANE))
        .filter(source -> source != null && source.kind() == Source.Kind.COUNTED)
        .map(
            source ->
                "the lanes of this file are counted by the order of its rows, which a row by itself"
                    + " does not tell; mend the file and bring it in again")
        .findFirst();
  }

  /** Reads a row by itself; gives what becomes of it. */
  public Trial attempt(String row) {
    try {
      Look look = look(row);
      List<String> cells = List.of();
      while (look.run().next()) {
        cells = cells.isEmpty() ? look.run().cells() : cells;
        look.run().take();
      }
      return new Trial(cells, look.run().count().rows(), look.rejections());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (FileRefused e) {
      throw new IllegalStateException(e);
    }
  }

  /** Rows as a file of their own. */
  public InputStream file(List<String> rows) {
    String text = MARK + head.text() + "\n" + String.join("\n", rows) + "\n";
    return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
  }

  /**
   * The rows of a file that begins with this head, as they stand in it.
   *
   * @throws FileRefused if it begins in another way
   */
  public List<String> rowsOf(byte[] edited, String editedName) throws IOException, FileRefused {
    byte[] bytes = Utf8Input.open(new ByteArrayInputStream(edited)).stream().readAllBytes();
    String text = new Text().of(bytes, 0, bytes.length).replace("\r\n", "\n");
    String start = head.text() + "\n";
    if (!text.startsWith(start)) {
      throw new FileRefused(
          editedName
              + " does not begin as the file that the rows are from; leave these lines as they"
              + " were printed: "
              + Words.quoted(head.text().strip()));
    }
    byte[] rest = text.substring(start.length()).getBytes(StandardCharsets.UTF_8);
    Text decoder = new Text();
    Row row = new Row(dialect.columns().size(), decoder);
    ByteBlocks blocks = new ByteBlocks(new ByteArrayInputStream(rest));
    RowReader reader = new RowReader(blocks, dialect.separator(), row, decoder);
    List<String> rows = new ArrayList<>();
    while (reader.next()) {
      rows.add(reader.raw());
    }
    return rows;
  }

  private record Look(RowRun run, List<Rejection> rejections) {}

  private Look look(String row) throws FileRefused {
    List<Rejection> rejections = new ArrayList<>();
    try {
      return new Look(head(file(List.of(row))).rows(new Nowhere(), rejections::add), rejections);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Mappings mappings(KeptHead head, String fileName) throws FileRefused {
    if (head.mapping().isEmpty()) {
      return Mappings.NONE;
    }
    byte[] yaml = head.mapping().get().getBytes(StandardCharsets.UTF_8);
    try {
      Mapping mapping =
          MappingFile.read(new ByteArrayInputStream(yaml), "the mapping of " + fileName);
      return new Mappings(List.of(mapping.forOneRow()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (MappingFault e) {
      throw new FileRefused("the mapping of " + fileName + " cannot be used: " + e.getMessage());
    }
  }

  private static final class Nowhere implements ReadingSink {
    @Override
    public void reading(
        SampleKey key, Instant takenAt, Structure structure, int position, int lane, double um) {
      // only what is rejected matters
    }

    @Override
    public void missing(
        SampleKey key, Instant takenAt, Structure structure, int position, int lane) {
      // only what is rejected matters
    }
  }
}
