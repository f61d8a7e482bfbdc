package dev.filmward.report.paper;

/** What the markup is made for. */
enum Medium {
  /** The setter of the PDF: words of drawings are real text laid over the shapes. */
  SHEET,
  /** A browser: words of drawings are within the SVG. */
  SCREEN
}
