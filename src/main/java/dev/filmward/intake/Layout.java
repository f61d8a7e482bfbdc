package dev.filmward.intake;

/** How readings are laid out in rows. */
public enum Layout {
  LONG("one reading a row"),
  WIDE("one lane of a sample a row, with a column for each layer");

  private final String words;

  Layout(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
