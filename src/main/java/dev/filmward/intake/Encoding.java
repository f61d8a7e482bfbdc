package dev.filmward.intake;

/** How a file's bytes stand for text. */
public enum Encoding {
  UTF_8("UTF-8"),
  UTF_16_LE("UTF-16 (little endian)"),
  UTF_16_BE("UTF-16 (big endian)"),
  WINDOWS_1252("Windows-1252");

  private final String words;

  Encoding(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
