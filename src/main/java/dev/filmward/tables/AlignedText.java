package dev.filmward.tables;

import java.util.Locale;
import java.util.function.ToIntFunction;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.NumericColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/** A table as text: words to the left, numbers aligned on the decimal sign, a dash for a gap. */
final class AlignedText {
  private AlignedText() {}

  /**
   * Lays a table out.
   *
   * @param digits behind the decimal sign, by the column's name
   */
  static String of(Table table, ToIntFunction<String> digits) {
    String[][] cells = new String[table.rowCount() + 1][table.columnCount()];
    for (int c = 0; c < table.columnCount(); c++) {
      Column<?> column = table.column(c);
      cells[0][c] = column.name();
      for (int r = 0; r < table.rowCount(); r++) {
        cells[r + 1][c] = cell(column, r, digits.applyAsInt(column.name()));
      }
    }
    StringBuilder text = new StringBuilder();
    for (String[] row : cells) {
      for (int c = 0; c < row.length; c++) {
        text.append(c == 0 ? "" : "  ").append(pad(row[c], width(cells, c), table.column(c)));
      }
      text.setLength(text.toString().stripTrailing().length());
      text.append('\n');
    }
    return text.toString();
  }

  private static String cell(Column<?> column, int row, int digits) {
    if (column.isMissing(row)) {
      return column instanceof NumericColumn ? "-" : "";
    }
    return column instanceof DoubleColumn numbers
        ? String.format(Locale.ROOT, "%." + digits + "f", numbers.getDouble(row))
        : printable(column.getString(row));
  }

  /** Control characters in a name from a file must not steer a terminal. */
  private static String printable(String text) {
    return text.replaceAll("\\p{Cntrl}", "\uFFFD");
  }

  private static int width(String[][] cells, int column) {
    int width = 0;
    for (String[] row : cells) {
      width = Math.max(width, row[column].length());
    }
    return width;
  }

  private static String pad(String cell, int width, Column<?> column) {
    String spaces = " ".repeat(width - cell.length());
    return column instanceof NumericColumn ? spaces + cell : cell + spaces;
  }
}
