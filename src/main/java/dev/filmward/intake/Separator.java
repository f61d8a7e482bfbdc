package dev.filmward.intake;

/** What stands between two fields of a row. */
public enum Separator {
  COMMA(',', "commas"),
  SEMICOLON(';', "semicolons"),
  TAB('\t', "tabs"),
  PIPE('|', "vertical bars");

  private final char sign;
  private final String words;

  Separator(char sign, String words) {
    this.sign = sign;
    this.words = words;
  }

  public char sign() {
    return sign;
  }

  /** Many of it. */
  public String words() {
    return words;
  }
}
