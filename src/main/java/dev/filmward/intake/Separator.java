package dev.filmward.intake;

/** What stands between two fields of a row. */
public enum Separator {
  COMMA(',', "comma"),
  SEMICOLON(';', "semicolon"),
  TAB('\t', "tab");

  private final char sign;
  private final String word;

  Separator(char sign, String word) {
    this.sign = sign;
    this.word = word;
  }

  public char sign() {
    return sign;
  }

  public String word() {
    return word;
  }
}
