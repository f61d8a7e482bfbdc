package dev.filmward.tables;

import dev.filmward.intake.FilePreview;
import java.util.ArrayList;
import java.util.List;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/** The first rows of a file as a table, as they would be read. */
public final class PreviewTable {
  private final Table table;

  /** Lays the rows of a preview out; a row that is too short is filled with empty cells. */
  public PreviewTable(FilePreview preview) {
    List<String> headings = headings(preview);
    List<StringColumn> columns = new ArrayList<>();
    for (int c = 0; c < headings.size(); c++) {
      StringColumn column = StringColumn.create(unique(headings, c));
      for (List<String> row : preview.rows()) {
        column.append(c < row.size() ? row.get(c) : "");
      }
      columns.add(column);
    }
    this.table = Table.create("preview").addColumns(columns.toArray(StringColumn[]::new));
  }

  /** Aligned, for people. */
  public String text() {
    return AlignedText.of(table, column -> 0);
  }

  private static List<String> headings(FilePreview preview) {
    return preview.dialect().columns().stream().map(column -> column.heading()).toList();
  }

  private static String unique(List<String> headings, int index) {
    String heading = headings.get(index);
    boolean taken =
        headings.subList(0, index).stream().anyMatch(other -> other.equalsIgnoreCase(heading));
    return taken || heading.isBlank() ? heading + " #" + (index + 1) : heading;
  }
}
