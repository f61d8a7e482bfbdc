package dev.filmward.report.paper;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.report.paper.TableBook.Entry;
import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.OptionalDouble;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.junit.jupiter.api.Test;

/** A table as a workbook, read back by the library's reader. */
class TableBookTest {
  @Test
  void numbersAreNumbersAndNoTextIsAFormula() throws Exception {
    byte[] book =
        TableBook.of(
            List.of("Layer", "Mean"),
            List.of(
                List.of(
                    new Entry("=1+1 \u0000<b>", OptionalDouble.empty()),
                    new Entry("14.2", OptionalDouble.of(14.2)))));
    try (ReadableWorkbook read = new ReadableWorkbook(new ByteArrayInputStream(book))) {
      List<Row> rows = read.getFirstSheet().read();
      assertThat(rows.get(0).getCellText(0)).isEqualTo("Layer");
      assertThat(rows.get(1).getCell(0).getType()).isEqualTo(CellType.STRING);
      assertThat(rows.get(1).getCellText(0)).isEqualTo("=1+1 <b>");
      assertThat(rows.get(1).getCell(1).getType()).isEqualTo(CellType.NUMBER);
      assertThat(rows.get(1).getCellAsNumber(1).orElseThrow().doubleValue()).isEqualTo(14.2);
    }
  }
}
