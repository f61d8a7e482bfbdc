package dev.filmward.intake;

/** What stands between the whole and the broken part of a number. */
public enum DecimalSign {
  POINT('.'),
  COMMA(',');

  private final char sign;

  DecimalSign(char sign) {
    this.sign = sign;
  }

  public char sign() {
    return sign;
  }
}
