package dev.filmward.intake;

/** What stands between groups of three digits. */
public enum Thousands {
  NONE(""),
  /** A space, wide or narrow, that breaks a line or not. */
  SPACE(" \u00a0\u2009\u202f"),
  POINT("."),
  COMMA(","),
  APOSTROPHE("'\u2019");

  private final String signs;

  Thousands(String signs) {
    this.signs = signs;
  }

  /** Any one of these is such a sign. */
  public String signs() {
    return signs;
  }
}
