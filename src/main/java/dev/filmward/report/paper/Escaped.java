package dev.filmward.report.paper;

import java.util.Locale;

/** Takes text, gives it as XML can carry it. Pure. */
final class Escaped {
  private Escaped() {}

  static String of(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }

  /** Characters that XML has no way to carry by their number. */
  static String printable(String text) {
    StringBuilder printable = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            character -> {
              boolean isText =
                  character == '\t'
                      || character == '\n'
                      || (character >= 0x20 && character < 0xD800)
                      || (character >= 0xE000 && character < 0xFFFE)
                      || character >= 0x10000;
              if (isText) {
                printable.appendCodePoint(character);
              } else {
                printable.append(String.format(Locale.ROOT, "[U+%04X]", character));
              }
            });
    return printable.toString();
  }
}
