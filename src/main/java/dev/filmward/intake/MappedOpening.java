package dev.filmward.intake;

import dev.filmward.film.ReadingSink;
import dev.filmward.film.Structures;
import java.io.IOException;
import java.io.InputStream;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/** Opens one file through a mapping whose header was found in it. One owner, one thread. */
final class MappedOpening {
  private final Mapping mapping;
  private final byte[] head;
  private final HeadText text;
  private final int headerIndex;
  private final Surroundings around;
  private final MappedFields fields;

  /**
   * Opens a file.
   *
   * @param head the file's beginning, in bytes and as text
   * @throws FileRefused if what the mapping needs of the name or the lines above the header is not
   *     there
   */
  MappedOpening(Mappings.Fit fit, byte[] head, HeadText text, Surroundings around)
      throws FileRefused {
    this.mapping = fit.mapping();
    this.head = head;
    this.text = text;
    this.headerIndex = fit.headerIndex();
    this.around = around;
    FileFacts facts =
        FileFacts.of(
            around.fileName, text.lines().subList(0, headerIndex), mapping.form().separator());
    this.fields = MappedFields.of(mapping, facts, around.fileName);
  }

  /** The file's name, and what is around the parsing of every file. */
  record Surroundings(String fileName, Structures structures, ZoneId plantZone) {}

  RowRun open(InputStream rest, ReadingSink readings, Consumer<Rejection> rejections)
      throws IOException {
    Separator separator = mapping.form().separator();
    Text decoder = new Text();
    List<Column> columns = new MappedColumns(mapping).all();
    Row row = new Row(columns.size(), decoder);
    RowReader reader = new RowReader(blocks(rest), separator, row, decoder);
    Tally tally = new Tally(around.fileName, reader, mapping.values().size(), rejections);
    MappedTimes times = new MappedTimes(mapping.time(), around.plantZone);
    MappedHead mapped = new MappedHead(mapping, around.structures, times, fields::needed, tally);
    MappedRows rows = new MappedRows(mapping, mapped, fields, tally, readings);
    Dialect dialect = new Dialect(encoding(), separator, mapping.layout(), columns);
    return new MappedRun(
        dialect, row, reader, rows, () -> count(tally.counts(), notes(dialect, times, rows)));
  }

  Optional<KeptHead> kept() {
    String lines =
        text.lines().subList(0, lastOfHead() + 1).stream()
            .map(HeadText.Line::text)
            .collect(Collectors.joining("\n"));
    return KeptHead.of(lines, Optional.of(mapping.yaml()));
  }

  private int lastOfHead() {
    return Math.min(headerIndex + mapping.form().rowsAfterHeader(), text.lines().size() - 1);
  }

  private FileCount count(Tally.Counts counts, List<String> notes) {
    return new FileCount(
        around.fileName,
        counts.rows(),
        counts.readings(),
        counts.missing(),
        counts.quarantined(),
        notes);
  }

  private Encoding encoding() {
    return mapping
        .form()
        .encoding()
        .filter(wanted -> text.marked() == HeadText.Mark.ABSENT)
        .orElse(text.encoding());
  }

  /** Blocks of UTF-8 that start at the first row. */
  private ByteBlocks blocks(InputStream rest) throws IOException {
    InputStream whole = HeadText.again(head, rest);
    InputStream utf8 =
        encoding() == text.encoding()
            ? Utf8Input.open(whole).stream()
            : new TranscodingStream(whole, encoding().charset());
    ByteBlocks blocks = new ByteBlocks(utf8);
    HeadText.Line line = text.lines().get(lastOfHead());
    skip(blocks, line.number() + line.count() - 1);
    return blocks;
  }

  /** The lines lie in the first block, since the beginning that was looked at does. */
  private static void skip(ByteBlocks blocks, int lines) {
    for (int i = 0; i < lines && blocks.from < blocks.limit; i++) {
      while (blocks.bytes[blocks.from] != '\n') {
        blocks.from++;
      }
      blocks.from = Math.min(blocks.from + 1, blocks.limit);
      blocks.line++;
    }
  }

  private List<String> notes(Dialect dialect, MappedTimes times, MappedRows rows) {
    List<String> notes = new ArrayList<>();
    notes.add("read through the mapping " + Words.quoted(mapping.name()));
    List<String> ignored =
        dialect.ignoredColumns().stream()
            .map(Column::heading)
            .filter(h -> !h.startsWith("#"))
            .toList();
    if (!ignored.isEmpty()) {
      notes.add(Words.count(ignored.size(), "column") + " ignored: " + Words.some(ignored));
    }
    times.note(notes);
    rows.note(notes);
    return notes;
  }
}
