package dev.filmward.report.paper;

import dev.filmward.report.ReportForm.Choice;
import dev.filmward.report.ReportForm.Issue;
import dev.filmward.report.ReportForm.Size;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;

/** Writes paper forms and reads them back, for their tests. */
final class Papers {
  private Papers() {}

  static byte[] written(PaperForm form, Issue issue, String language, Size size)
      throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    form.write(issue, new Choice(language, size), out);
    return out.toByteArray();
  }

  static byte[] pdf(Issue issue, String language) throws IOException {
    return written(PaperForm.PDF, issue, language, Size.A4);
  }

  static String html(Issue issue, String language) throws IOException {
    return new String(written(PaperForm.HTML, issue, language, Size.A4), StandardCharsets.UTF_8);
  }

  /** In the order of reading, with plain spaces. */
  static List<String> pages(byte[] pdf) throws IOException {
    List<String> pages = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      for (int page = 1; page <= document.getNumberOfPages(); page++) {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        pages.add(plain(stripper.getText(document)));
      }
    }
    return pages;
  }

  static String text(byte[] pdf) throws IOException {
    return String.join("\n", pages(pdf));
  }

  static String plain(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFKC)
        .replaceAll("[\\s\u200e\u200f\u202a-\u202e]+", " ");
  }

  /** All rows of a sheet as text; numbers as {@link Double#toString(double)} writes them. */
  static List<List<String>> sheet(byte[] workbook, String name) throws IOException {
    List<List<String>> rows = new ArrayList<>();
    try (ReadableWorkbook book = new ReadableWorkbook(new ByteArrayInputStream(workbook))) {
      Sheet sheet = book.findSheet(name).orElseThrow();
      for (Row row : sheet.read()) {
        rows.add(row.stream().map(Papers::text).toList());
      }
    }
    return rows;
  }

  private static String text(Cell cell) {
    if (cell == null) {
      return "";
    }
    return switch (cell.getType()) {
      case NUMBER -> String.valueOf(cell.asNumber().doubleValue());
      default -> cell.getText();
    };
  }
}
