package dev.filmward.gauge.echo;

/** The sign of an echo against the pulse that was sent. */
public enum Polarity {
  SAME("+"),
  TURNED_OVER("-"),
  /** Both sides are alike, so nothing comes back. */
  NONE("0"),
  /** A medium is not known. */
  UNKNOWN("?");

  private final String sign;

  Polarity(String sign) {
    this.sign = sign;
  }

  public String sign() {
    return sign;
  }

  static Polarity of(double reflection) {
    if (reflection == 0) {
      return NONE;
    }
    return reflection > 0 ? SAME : TURNED_OVER;
  }
}
