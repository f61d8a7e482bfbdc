package dev.filmward.report.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/**
 * Takes a paper, gives a workbook: a sheet for each kind of table, with what a table is about in
 * front of its rows. Numbers are in full and shown as on paper; words are words, never formulas.
 * The same paper gives the same bytes. Pure.
 */
final class Spreadsheet {
  private static final int WIDEST = 60;
  private static final int GREATEST_TEXT = 32_000;

  private Spreadsheet() {}

  static byte[] of(Paper paper, Texts texts) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (Workbook book = new Workbook(out, "Filmward", null)) {
      about(book, paper, texts);
      for (Map.Entry<String, List<Block.Table>> kind : byKind(paper, texts).entrySet()) {
        sheet(book.newWorksheet(texts.say("sheet." + kind.getKey())), kind.getValue(), texts);
      }
    }
    return dated(out.toByteArray(), paper.at());
  }

  /** Without those that are shortened for paper; the whole one is behind. */
  private static Map<String, List<Block.Table>> byKind(Paper paper, Texts texts) {
    Map<String, List<Block.Table>> kinds = new LinkedHashMap<>();
    List<Block.Table> whole =
        paper.tables().stream().filter(table -> texts.knows("sheet." + table.sheet())).toList();
    for (Block.Table table : whole) {
      kinds.computeIfAbsent(table.sheet(), kind -> new ArrayList<>()).add(table);
    }
    return kinds;
  }

  private static void about(Workbook book, Paper paper, Texts texts) {
    Worksheet sheet = book.newWorksheet(texts.say("sheet.about"));
    write(sheet, 0, 0, Cell.text(paper.title()));
    sheet.style(0, 0).bold().set();
    write(sheet, 1, 0, Cell.text(paper.subject()));
    write(sheet, 2, 0, Cell.text(paper.foot()));
    int row = 4;
    for (Block block : paper.blocks()) {
      if (block instanceof Block.Paragraph paragraph && paragraph.voice() == Block.Voice.GATE) {
        write(sheet, row++, 0, Cell.text(paragraph.text()));
      }
    }
    sheet.width(0, WIDEST);
  }

  /** All tables of a kind have the same columns. */
  private static void sheet(Worksheet sheet, List<Block.Table> tables, Texts texts) {
    Block.Table first = tables.get(0);
    int offset = first.context().size();
    for (int i = 0; i < offset; i++) {
      heading(sheet, i, texts.say("context." + i), 18);
    }
    for (int i = 0; i < first.columns().size(); i++) {
      heading(sheet, offset + i, first.columns().get(i).title(), 14);
    }
    int row = 1;
    for (Block.Table table : tables) {
      for (Block.Table.Row cells : table.rows()) {
        for (int i = 0; i < offset; i++) {
          write(sheet, row, i, Cell.text(table.context().get(i)));
        }
        for (int i = 0; i < cells.cells().size(); i++) {
          write(sheet, row, offset + i, cells.cells().get(i));
        }
        row++;
      }
    }
    sheet.freezePane(0, 1);
  }

  private static void heading(Worksheet sheet, int column, String title, int leastWidth) {
    write(sheet, 0, column, Cell.text(title));
    sheet.style(0, column).bold().wrapText(true).set();
    sheet.width(column, Math.min(WIDEST, Math.max(leastWidth, title.length() + 2)));
  }

  private static void write(Worksheet sheet, int row, int column, Cell cell) {
    if (cell.number().isPresent()) {
      sheet.value(row, column, cell.number().getAsDouble());
      String format = cell.decimals() == 0 ? "0" : "0." + "0".repeat(cell.decimals());
      sheet.style(row, column).format(format).set();
    } else {
      String text = Escaped.printable(cell.text());
      sheet.value(row, column, text.substring(0, Math.min(text.length(), GREATEST_TEXT)));
    }
  }

  /** Written again with the moment of the report wherever the library put that of writing. */
  private static byte[] dated(byte[] book, Instant at) throws IOException {
    String moment = at.truncatedTo(ChronoUnit.SECONDS).toString();
    ByteArrayOutputStream out = new ByteArrayOutputStream(book.length);
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      for (Map.Entry<String, byte[]> part : ZippedParts.of(book).entrySet()) {
        ZipEntry dated = new ZipEntry(part.getKey());
        dated.setTimeLocal(at.atZone(ZoneOffset.UTC).toLocalDateTime().withNano(0));
        zip.putNextEntry(dated);
        boolean isDated = part.getKey().equals("docProps/core.xml");
        zip.write(isDated ? withMoment(part.getValue(), moment) : part.getValue());
        zip.closeEntry();
      }
    }
    return out.toByteArray();
  }

  private static byte[] withMoment(byte[] properties, String moment) {
    return new String(properties, StandardCharsets.UTF_8)
        .replaceAll("(<dcterms:created[^>]*>)[^<]*", "$1" + moment)
        .replaceAll("(<dcterms:modified[^>]*>)[^<]*", "$1" + moment)
        .getBytes(StandardCharsets.UTF_8);
  }
}
