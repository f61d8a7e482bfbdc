package dev.filmward.report.paper.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/** Collects shapes and labels of one {@link Drawing}. Mutable, for one thread. */
final class Sketch {
  private final double widthPt;
  private final double heightPt;
  private final StringBuilder shapes = new StringBuilder(2000);
  private final TreeSet<Hatch> hatches = new TreeSet<>();
  private final List<Label> labels = new ArrayList<>();

  Sketch(double widthPt, double heightPt) {
    this.widthPt = widthPt;
    this.heightPt = heightPt;
  }

  void fill(Box box, Ink ink) {
    rect(box, "fill=\"" + ink.hex() + "\"");
  }

  void hatch(Box box, Hatch hatch) {
    if (box.width() > 0 && box.height() > 0) {
      hatches.add(hatch);
      rect(box, "fill=\"url(#" + hatch.id() + ")\"");
    }
  }

  void outline(Box box, double widthPt) {
    rect(box, "fill=\"none\" " + stroked(Ink.INK, widthPt));
  }

  private void rect(Box box, String paint) {
    add(
        "<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" %s/>",
        f(box.left()), f(box.top()), f(box.width()), f(box.height()), paint);
  }

  void line(double x1, double y1, double x2, double y2, Ink ink, double widthPt) {
    path("M" + f(x1) + " " + f(y1) + "L" + f(x2) + " " + f(y2), ink, widthPt);
  }

  void path(String d, Ink ink, double widthPt) {
    if (!d.isEmpty()) {
      add("<path d=\"%s\" fill=\"none\" %s/>", d, stroked(ink, widthPt));
    }
  }

  void dashed(String d, Ink ink, double widthPt) {
    add("<path d=\"%s\" fill=\"none\" stroke-dasharray=\"3 2\" %s/>", d, stroked(ink, widthPt));
  }

  void dot(double x, double y, double radius) {
    add("<circle cx=\"%s\" cy=\"%s\" r=\"%s\" fill=\"%s\"/>", f(x), f(y), f(radius), Ink.INK.hex());
  }

  void ring(double x, double y, double radius) {
    add(
        "<circle cx=\"%s\" cy=\"%s\" r=\"%s\" fill=\"none\" %s/>",
        f(x), f(y), f(radius), stroked(Ink.INK, 1));
  }

  /** A circle that hides what is beneath. */
  void open(double x, double y, double radius) {
    add(
        "<circle cx=\"%s\" cy=\"%s\" r=\"%s\" fill=\"%s\" %s/>",
        f(x), f(y), f(radius), Ink.PAPER.hex(), stroked(Ink.INK, 1));
  }

  void write(double x, double y, String text, Label.Anchor anchor) {
    write(x, y, text, anchor, Label.Tone.SOFT);
  }

  void write(double x, double y, String text, Label.Anchor anchor, Label.Tone tone) {
    labels.add(new Label(x, y, text, anchor, tone, Label.Ground.CLEAR));
  }

  /** Among marks, which it hides. */
  void writeOver(double x, double y, String text, Label.Anchor anchor, Label.Tone tone) {
    labels.add(new Label(x, y, text, anchor, tone, Label.Ground.MARKED));
  }

  private void add(String pattern, Object... parts) {
    shapes.append(String.format(Locale.ROOT, pattern, parts));
  }

  private static String stroked(Ink ink, double widthPt) {
    return "stroke=\"" + ink.hex() + "\" stroke-width=\"" + f(widthPt) + "\"";
  }

  /** A length in points; hundredths are finer than any printer. */
  static String f(double value) {
    String text = String.format(Locale.ROOT, "%.2f", value);
    return text.equals("-0.00") ? "0.00" : text;
  }

  Drawing drawing() {
    StringBuilder all = new StringBuilder();
    if (!hatches.isEmpty()) {
      all.append("<defs>");
      hatches.forEach(hatch -> all.append(hatch.pattern()));
      all.append("</defs>");
    }
    return new Drawing(widthPt, heightPt, all.append(shapes).toString(), labels);
  }
}
