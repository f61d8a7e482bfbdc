package dev.filmward.intake;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/**
 * Takes a file of a gauge study (CSV: {@code part,operator,trial,layer,thickness_um}), gives its
 * readings or rejections, row by row, so that memory does not grow with the file. Separator,
 * encoding, decimal sign, unit and quoted fields as in files of readings. A thickness that is
 * empty, {@code NaN} or a dash was not measured and is passed over. One owner, one thread; {@link
 * #read} is for one file.
 */
public final class StudyFile {
  private static final double LARGEST_UM = 1e100;

  private final String fileName;
  private final Consumer<StudyRow> rows;
  private final Consumer<Rejection> rejections;
  private final Decimals decimals = new Decimals();

  /**
   * @param fileName for messages
   */
  public StudyFile(String fileName, Consumer<StudyRow> rows, Consumer<Rejection> rejections) {
    this.fileName = fileName;
    this.rows = rows;
    this.rejections = rejections;
  }

  /**
   * Reads the whole stream; does not close it.
   *
   * @throws FileRefused if the header cannot be used; nothing was delivered then
   */
  public void read(InputStream in) throws IOException, FileRefused {
    Utf8Input input = Utf8Input.open(in);
    ByteBlocks blocks = new ByteBlocks(input.stream());
    Text text = new Text();
    StudyColumns columns =
        StudyColumns.of(new FirstLine(fileName, blocks, text, StudyColumns.EXPECTED));
    Row row = new Row(columns.count(), text);
    RowReader reader = new RowReader(blocks, columns.separator(), row, text);
    while (reader.next()) {
      new Taking(columns, row, reader).take();
    }
  }

  /** One row being read. */
  private final class Taking {
    private final StudyColumns columns;
    private final Row row;
    private final RowReader reader;
    private boolean isFaulty;

    Taking(StudyColumns columns, Row row, RowReader reader) {
      this.columns = columns;
      this.row = row;
      this.reader = reader;
    }

    void take() {
      if (!row.fault.isEmpty() || row.count != columns.count()) {
        reject("", "", Reasons.notSplit(row, columns.count()));
        return;
      }
      String part = name(columns.part());
      String operator = name(columns.operator());
      String trial = name(columns.trial());
      Optional<String> layer =
          columns.layer() < 0 ? Optional.empty() : Optional.of(name(columns.layer()));
      OptionalDouble um = isFaulty ? OptionalDouble.empty() : thickness();
      if (um.isPresent()) {
        rows.accept(new StudyRow(row.line, part, operator, trial, layer, um.getAsDouble()));
      }
    }

    private String name(int field) {
      if (row.isEmpty(field)) {
        String heading = columns.headings().get(field);
        reject(heading, "", heading + " is empty; every reading names it");
      }
      return row.text(field);
    }

    private OptionalDouble thickness() {
      String value = row.text(columns.thickness());
      return switch (decimals.read(value)) {
        case MISSING -> OptionalDouble.empty();
        case NO_NUMBER -> refused(value, Reasons.noNumber(value));
        case NOT_FINITE -> refused(value, Reasons.notFinite(value));
        case NUMBER -> inRange(decimals.value() * columns.unit().micrometres(), value);
      };
    }

    private OptionalDouble inRange(double um, String value) {
      if (!(um > 0)) {
        return refused(value, Reasons.notAboveZero(value));
      }
      return um > LARGEST_UM ? refused(value, Reasons.tooLarge(value)) : OptionalDouble.of(um);
    }

    private OptionalDouble refused(String value, String reason) {
      reject(columns.headings().get(columns.thickness()), value, reason);
      return OptionalDouble.empty();
    }

    private void reject(String column, String value, String reason) {
      if (isFaulty) {
        return;
      }
      isFaulty = true;
      rejections.accept(
          new Rejection(fileName, row.line, column, Words.cut(value), reason, reader.raw(), 1));
    }
  }
}
