package dev.filmward.report.paper;

import dev.filmward.report.paper.drawing.Drawing;
import java.util.List;

/** A piece of a {@link Paper}, in the order of reading. All are immutable. */
sealed interface Block {

  /**
   * A heading.
   *
   * @param level 1 begins a sheet and goes into the bookmarks, 2 and 3 are within
   * @param id to link to
   */
  record Heading(int level, String text, String id) implements Block {}

  /** How a paragraph is set. */
  enum Voice {
    PLAIN,
    LEAD,
    SOFT,
    /** What must be known before anything else is read. */
    GATE
  }

  /** A paragraph. */
  record Paragraph(String text, Voice voice) implements Block {}

  /** Points of a list. */
  record Points(List<String> texts, Order order) implements Block {
    /** Whether the order says something. */
    enum Order {
      NUMBERED,
      PLAIN
    }

    public Points {
      texts = List.copyOf(texts);
    }
  }

  /** Names with what they are, each a row. */
  record Facts(List<Fact> facts) implements Block {
    /** One of them. */
    record Fact(String name, String value) {}

    public Facts {
      facts = List.copyOf(facts);
    }
  }

  /**
   * A table.
   *
   * @param sheet of the workbook that it belongs to
   * @param context what all rows have in common, before them in the workbook
   */
  record Table(
      String sheet, String caption, List<String> context, List<Column> columns, List<Row> rows)
      implements Block {
    /** A row; its first cell names it. */
    record Row(List<Cell> cells) {
      Row {
        cells = List.copyOf(cells);
      }

      static Row of(Cell... cells) {
        return new Row(List.of(cells));
      }
    }

    public Table {
      context = List.copyOf(context);
      columns = List.copyOf(columns);
      rows = List.copyOf(rows);
      for (Row row : rows) {
        if (row.cells().size() != columns.size()) {
          throw new IllegalArgumentException(
              caption + ": " + row.cells().size() + " cells in " + columns.size() + " columns");
        }
      }
    }
  }

  /**
   * A drawing with what it says.
   *
   * @param alternative for who cannot see it
   */
  record Figure(Drawing drawing, String caption, String alternative) {}

  /** Drawings beside each other, in rows as they fit. */
  record Figures(List<Figure> figures) implements Block {
    public Figures {
      figures = List.copyOf(figures);
    }
  }
}
