package dev.filmward.report.paper;

import java.util.Locale;

/** Sheets that the paper is printed on. */
public enum PageSize {
  A4("210mm 297mm", 496),
  LETTER("8.5in 11in", 512);

  private final String css;
  private final double contentPt;

  PageSize(String css, double contentPt) {
    this.css = css;
    this.contentPt = contentPt;
  }

  String css() {
    return css;
  }

  /** Width between the margins, in points. */
  double contentPt() {
    return contentPt;
  }

  /** By its name in small letters; says which there are. */
  public static PageSize of(String name) {
    for (PageSize size : values()) {
      if (size.name().toLowerCase(Locale.ROOT).equals(name)) {
        return size;
      }
    }
    throw new IllegalArgumentException("paper \"" + name + "\": give a4 or letter");
  }
}
