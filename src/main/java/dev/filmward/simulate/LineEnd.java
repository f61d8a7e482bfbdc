package dev.filmward.simulate;

/** What ends a row. */
enum LineEnd {
  LF("\n"),
  CRLF("\r\n");

  private final String characters;

  LineEnd(String characters) {
    this.characters = characters;
  }

  String characters() {
    return characters;
  }
}
