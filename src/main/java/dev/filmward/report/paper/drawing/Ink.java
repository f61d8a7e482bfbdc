package dev.filmward.report.paper.drawing;

/** The inks of paper: one for data, paler ones of the same, and none for "all well". */
public enum Ink {
  INK("#1c2126"),
  SOFT("#4d5358"),
  HATCH("#8d9093"),
  RULE("#c3c0b7"),
  PLY("#f6f4ef"),
  PAPER("#ffffff");

  private final String hex;

  Ink(String hex) {
    this.hex = hex;
  }

  public String hex() {
    return hex;
  }
}
