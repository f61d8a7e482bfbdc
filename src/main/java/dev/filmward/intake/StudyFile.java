package dev.filmward.intake;

import dev.filmward.film.LengthUnit;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/**
 * Takes a file of a gauge study (CSV: {@code part,operator,trial,layer,thickness_um}), gives its
 * readings or rejections, row by row, so that memory does not grow with the file. Separator,
 * encoding, decimal sign, unit and quoted fields as in files of readings. A thickness that is
 * empty, {@code NaN} or a dash was not measured and is passed over. A column {@code reference_um}
 * may say what each part is known to measure. One owner, one thread; {@link #read} is for one file.
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
      OptionalDouble um = length(columns.thickness(), columns.unit());
      OptionalDouble reference = OptionalDouble.empty();
      if (columns.reference().isPresent()) {
        StudyColumns.Reference column = columns.reference().get();
        reference = length(column.field(), column.unit());
      }
      if (um.isPresent() && !isFaulty) {
        rows.accept(
            new StudyRow(row.line, part, operator, trial, layer, um.getAsDouble(), reference));
      }
    }

    private String name(int field) {
      if (row.isEmpty(field)) {
        String heading = columns.headings().get(field);
        reject(heading, "", heading + " is empty; every reading names it");
      }
      return row.text(field);
    }

    private OptionalDouble length(int field, LengthUnit unit) {
      String value = row.text(field);
      return switch (decimals.read(value)) {
        case MISSING -> OptionalDouble.empty();
        case NO_NUMBER -> refused(field, Reasons.noNumber(value));
        case NOT_FINITE -> refused(field, Reasons.notFinite(value));
        case NUMBER -> inRange(field, decimals.value() * unit.micrometres());
      };
    }

    private OptionalDouble inRange(int field, double um) {
      if (!(um > 0)) {
        return refused(field, Reasons.notAboveZero(row.text(field)));
      }
      return um > LARGEST_UM
          ? refused(field, Reasons.tooLarge(row.text(field)))
          : OptionalDouble.of(um);
    }

    private OptionalDouble refused(int field, String reason) {
      reject(columns.headings().get(field), row.text(field), reason);
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
