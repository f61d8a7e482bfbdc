package dev.filmward.report.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/**
 * Takes one table, gives a workbook with it: numbers as numbers, words as words, never formulas.
 * Stateless.
 */
public final class TableBook {
  private static final int GREATEST_TEXT = 32_000;

  private TableBook() {}

  /**
   * A cell.
   *
   * @param number of it; where it is empty, the text counts
   */
  public record Entry(String text, OptionalDouble number) {}

  /** The table as the bytes of an .xlsx file. */
  public static byte[] of(List<String> heads, List<List<Entry>> rows) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (Workbook book = new Workbook(out, "Filmward", null)) {
      Worksheet sheet = book.newWorksheet("Table");
      for (int column = 0; column < heads.size(); column++) {
        sheet.value(0, column, shown(heads.get(column)));
        sheet.style(0, column).bold().set();
      }
      for (int row = 0; row < rows.size(); row++) {
        for (int column = 0; column < rows.get(row).size(); column++) {
          write(sheet, row + 1, column, rows.get(row).get(column));
        }
      }
      sheet.freezePane(0, 1);
    }
    return out.toByteArray();
  }

  private static void write(Worksheet sheet, int row, int column, Entry entry) {
    if (entry.number().isPresent()) {
      sheet.value(row, column, entry.number().getAsDouble());
    } else {
      sheet.value(row, column, shown(entry.text()));
    }
  }

  /** XML knows no other control characters. */
  private static String shown(String text) {
    String plain = text.replaceAll("[\\p{Cntrl}&&[^\t\n]]", "");
    return plain.length() > GREATEST_TEXT ? plain.substring(0, GREATEST_TEXT) : plain;
  }
}
