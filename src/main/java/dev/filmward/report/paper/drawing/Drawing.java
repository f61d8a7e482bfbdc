package dev.filmward.report.paper.drawing;

import java.util.List;

/**
 * A vector drawing: shapes as the inside of an SVG element, and labels beside them. Lengths in
 * points (1/72 inch) from the upper left corner. Immutable; the same numbers give the same bytes.
 *
 * @param shapes SVG elements without words
 */
public record Drawing(double widthPt, double heightPt, String shapes, List<Label> labels) {
  public Drawing {
    labels = List.copyOf(labels);
    if (!(widthPt > 0) || !(heightPt > 0)) {
      throw new IllegalArgumentException("a drawing has a size, not " + widthPt + "x" + heightPt);
    }
  }
}
