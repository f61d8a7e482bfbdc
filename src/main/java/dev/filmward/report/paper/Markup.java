package dev.filmward.report.paper;

import dev.filmward.report.paper.Block.Figure;
import dev.filmward.report.paper.Block.Table;
import java.util.List;
import java.util.Locale;

/**
 * Takes the blocks of a paper, gives well-formed XHTML. Text is never markup. Mutable, for one
 * thread and one document.
 */
final class Markup {
  private static final double ROW_PT = 520;
  private static final int WIDE_COLUMNS = 9;

  private final Medium medium;
  private final DrawingMarkup drawings;
  private final StringBuilder out = new StringBuilder(50_000);
  private boolean isSectionOpen;

  Markup(Medium medium) {
    this.medium = medium;
    drawings = new DrawingMarkup(medium);
  }

  String body(List<Block> blocks) {
    blocks.forEach(this::block);
    closeSection();
    return out.toString();
  }

  private void block(Block block) {
    if (block instanceof Block.Heading heading) {
      heading(heading);
    } else if (block instanceof Block.Paragraph paragraph) {
      String voice = paragraph.voice().name().toLowerCase(Locale.ROOT);
      out.append("<p class=\"").append(voice).append("\">");
      out.append(text(paragraph.text())).append("</p>\n");
    } else if (block instanceof Block.Points points) {
      points(points);
    } else if (block instanceof Block.Facts facts) {
      facts(facts);
    } else if (block instanceof Block.Figures figures) {
      figures(figures.figures());
    } else if (block instanceof Table table) {
      table(table);
    }
  }

  private void heading(Block.Heading heading) {
    if (heading.level() == 1) {
      String first = out.length() == 0 ? " first" : "";
      closeSection();
      out.append("<section class=\"sheet").append(first).append("\">\n");
      isSectionOpen = true;
    }
    String tag = "h" + heading.level();
    out.append('<').append(tag).append(" id=\"").append(attribute(heading.id())).append("\">");
    out.append(text(heading.text())).append("</").append(tag).append(">\n");
  }

  private void closeSection() {
    if (isSectionOpen) {
      out.append("</section>\n");
      isSectionOpen = false;
    }
  }

  private void points(Block.Points points) {
    String tag = points.order() == Block.Points.Order.NUMBERED ? "ol" : "ul";
    out.append('<').append(tag).append('>');
    points.texts().forEach(point -> out.append("<li>").append(text(point)).append("</li>"));
    out.append("</").append(tag).append(">\n");
  }

  private void facts(Block.Facts facts) {
    out.append("<table class=\"facts\"><tbody>");
    for (Block.Facts.Fact fact : facts.facts()) {
      out.append("<tr><th scope=\"row\">").append(text(fact.name())).append("</th><td>");
      out.append(text(fact.value())).append("</td></tr>");
    }
    out.append("</tbody></table>\n");
  }

  /** Rows of as many as fit, since a row stays on one page. */
  private void figures(List<Figure> figures) {
    out.append("<div class=\"figures\">");
    double left = 0;
    for (Figure figure : figures) {
      double width = figure.drawing().widthPt();
      if (left < width) {
        out.append(left > 0 ? "</div>" : "").append("<div class=\"row\">");
        left = ROW_PT;
      }
      figure(figure);
      left -= width;
    }
    out.append(figures.isEmpty() ? "" : "</div>").append("</div>\n");
  }

  private void figure(Figure figure) {
    String width = medium == Medium.SHEET ? "width:%.0fpt" : "--w:%.0f";
    out.append("<div class=\"figure\" style=\"");
    out.append(String.format(Locale.ROOT, width, figure.drawing().widthPt())).append('"');
    out.append(reached(figure.caption())).append('>');
    if (!figure.caption().isEmpty()) {
      out.append("<p class=\"caption\">").append(text(figure.caption())).append("</p>");
    }
    out.append(drawings.of(figure.drawing(), shown(figure.alternative()))).append("</div>\n");
  }

  /** What scrolls on a narrow screen is reached by keyboard. */
  private String reached(String name) {
    if (medium == Medium.SHEET) {
      return "";
    }
    String label = name.isEmpty() ? "" : " aria-label=\"" + text(name) + "\"";
    return " tabindex=\"0\" role=\"group\"" + label;
  }

  private void table(Table table) {
    out.append("<div class=\"scroll\"").append(reached(table.caption()));
    String wide = table.columns().size() >= WIDE_COLUMNS ? " wide" : "";
    out.append("><table class=\"figures-table").append(wide).append("\">");
    if (!table.caption().isEmpty()) {
      out.append("<caption>").append(text(table.caption())).append("</caption>");
    }
    double all = table.columns().stream().mapToDouble(Column::weight).sum();
    out.append("<thead><tr>");
    for (Column column : table.columns()) {
      out.append(
          String.format(
              Locale.ROOT,
              "<th scope=\"col\" class=\"%s\" style=\"width:%.2f%%\">%s</th>",
              column.kind().name().toLowerCase(Locale.ROOT),
              100 * column.weight() / all,
              text(column.title())));
    }
    out.append("</tr></thead><tbody>\n");
    table.rows().forEach(row -> row(table.columns(), row));
    out.append("</tbody></table></div>\n");
  }

  private void row(List<Column> columns, Table.Row row) {
    out.append("<tr>");
    for (int i = 0; i < columns.size(); i++) {
      String kind = columns.get(i).kind().name().toLowerCase(Locale.ROOT);
      String tone = row.cells().get(i).tone().name().toLowerCase(Locale.ROOT);
      String tag = i == 0 ? "th" : "td";
      out.append('<').append(tag).append(i == 0 ? " scope=\"row\"" : "");
      out.append(" class=\"").append(kind).append(' ').append(tone).append("\">");
      out.append(cell(row.cells().get(i))).append("</").append(tag).append('>');
    }
    out.append("</tr>\n");
  }

  private String cell(Cell cell) {
    String text = text(cell.text());
    String marked =
        cell.tone() == Cell.Tone.ACT ? "<span class=\"mark\">\u25c0</span>\u00a0" + text : text;
    if (cell.link().isEmpty()) {
      return marked;
    }
    return "<a href=\"#" + attribute(cell.link()) + "\" title=\"" + text + "\">" + marked + "</a>";
  }

  private String shown(String text) {
    return medium == Medium.SHEET ? Visible.of(text) : Escaped.printable(text);
  }

  private String text(String text) {
    return Escaped.of(shown(text));
  }

  private static String attribute(String text) {
    return Escaped.of(text);
  }
}
