package dev.filmward.report.paper;

import dev.filmward.report.paper.drawing.Drawing;
import dev.filmward.report.paper.drawing.Label;
import java.util.Locale;

/**
 * Takes drawings, gives their markup. On a screen words are within the SVG; on a sheet they are
 * lines of text laid over the shapes in the order of reading, so that they are set in the embedded
 * font and can be found. Ids are told apart by a count. Mutable, for one document.
 */
final class DrawingMarkup {
  private static final double SIZE_PT = 6.6;
  private static final double LINE_PT = 9;
  private static final double WIDE_PT = 300;

  private final Medium medium;
  private int drawings;

  DrawingMarkup(Medium medium) {
    this.medium = medium;
  }

  String of(Drawing drawing, String alternative) {
    drawings++;
    String shapes = drawing.shapes().replace("hatch-", "hatch" + drawings + "-");
    return medium == Medium.SCREEN
        ? svg(drawing, alternative, shapes + words(drawing))
        : "<div class=\"drawing\">"
            + svg(drawing, alternative, shapes)
            + "</div>"
            + overlay(drawing);
  }

  private String svg(Drawing drawing, String alternative, String inside) {
    String size = medium == Medium.SCREEN ? "" : size(drawing);
    String label = medium == Medium.SCREEN ? "aria-label" : "alt";
    return String.format(
        Locale.ROOT,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" %s=\"%s\"%s"
            + " viewBox=\"0 0 %.2f %.2f\">%s</svg>",
        label,
        Escaped.of(alternative),
        size,
        drawing.widthPt(),
        drawing.heightPt(),
        inside);
  }

  private static String size(Drawing drawing) {
    return String.format(
        Locale.ROOT, " width=\"%.2fpt\" height=\"%.2fpt\"", drawing.widthPt(), drawing.heightPt());
  }

  private static String words(Drawing drawing) {
    StringBuilder words = new StringBuilder();
    for (Label label : drawing.labels()) {
      words.append(
          String.format(
              Locale.ROOT,
              "<text class=\"%s %s\" text-anchor=\"%s\" x=\"%.2f\" y=\"%.2f\">%s</text>",
              tone(label),
              ground(label),
              label.anchor().name().toLowerCase(Locale.ROOT),
              label.x(),
              label.y() + SIZE_PT * 0.36,
              Escaped.of(Escaped.printable(label.text()))));
    }
    return words.toString();
  }

  /** Each a line of no height, so that all begin at the top of the drawing. */
  private static String overlay(Drawing drawing) {
    StringBuilder overlay = new StringBuilder();
    overlay.append(
        String.format(
            Locale.ROOT,
            "<div class=\"overlay\" style=\"margin-top:-%.2fpt;height:%.2fpt\">",
            drawing.heightPt(),
            drawing.heightPt()));
    for (Label label : drawing.labels()) {
      overlay.append(
          String.format(
              Locale.ROOT,
              "<div class=\"at\"><p class=\"label %s %s\""
                  + " style=\"padding-top:%.2fpt;margin-left:%.2fpt;width:%.0fpt\">%s</p></div>",
              tone(label),
              label.anchor().name().toLowerCase(Locale.ROOT),
              Math.max(0, label.y() - LINE_PT / 2),
              label.x() - shift(label),
              WIDE_PT,
              "<span class=\""
                  + ground(label)
                  + "\">"
                  + Escaped.of(Visible.of(label.text()))
                  + "</span>"));
    }
    return overlay.append("</div>").toString();
  }

  private static double shift(Label label) {
    return switch (label.anchor()) {
      case START -> 0;
      case MIDDLE -> WIDE_PT / 2;
      case END -> WIDE_PT;
    };
  }

  private static String tone(Label label) {
    return label.tone().name().toLowerCase(Locale.ROOT);
  }

  private static String ground(Label label) {
    return label.ground().name().toLowerCase(Locale.ROOT);
  }
}
