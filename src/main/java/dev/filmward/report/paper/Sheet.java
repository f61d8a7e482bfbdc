package dev.filmward.report.paper;

import dev.filmward.report.ReportForm.Size;

/** Sheets that the paper is printed on, with margins of 17.5 mm to the sides. */
enum Sheet {
  A4("210mm 297mm", 495),
  LETTER("8.5in 11in", 512);

  private final String css;
  private final double contentPt;

  Sheet(String css, double contentPt) {
    this.css = css;
    this.contentPt = contentPt;
  }

  static Sheet of(Size size) {
    return switch (size) {
      case A4 -> A4;
      case LETTER -> LETTER;
    };
  }

  String css() {
    return css;
  }

  /** Width between the margins, in points. */
  double contentPt() {
    return contentPt;
  }
}
