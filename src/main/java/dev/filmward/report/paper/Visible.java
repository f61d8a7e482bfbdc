package dev.filmward.report.paper;

import java.text.Bidi;
import java.util.Locale;

/**
 * Takes text as people gave it, gives it as a PDF can carry it: characters that no font has are
 * written by their number, [U+4E2D], so that none is lost; what runs from right to left is put in
 * the order in which it is seen, since PDF lays text out from the left. Pure.
 *
 * <p>Letters that join, as in Arabic, stand apart. Source of the order: Unicode Standard Annex 9,
 * by {@link Bidi}.
 */
final class Visible {
  private Visible() {}

  static String of(String text) {
    StringBuilder visible = new StringBuilder(text.length());
    text.codePoints().forEach(character -> append(visible, character));
    return seen(visible.toString());
  }

  private static void append(StringBuilder visible, int character) {
    if (Character.isWhitespace(character) && character < 0x20) {
      visible.append(' ');
    } else if (Fonts.has(character)) {
      visible.appendCodePoint(character);
    } else {
      visible.append(String.format(Locale.ROOT, "[U+%04X]", character));
    }
  }

  private static String seen(String text) {
    char[] chars = text.toCharArray();
    if (!Bidi.requiresBidi(chars, 0, chars.length)) {
      return text;
    }
    Bidi bidi = new Bidi(text, Bidi.DIRECTION_LEFT_TO_RIGHT);
    int runs = bidi.getRunCount();
    byte[] levels = new byte[runs];
    Object[] parts = new Object[runs];
    for (int i = 0; i < runs; i++) {
      levels[i] = (byte) bidi.getRunLevel(i);
      String part = text.substring(bidi.getRunStart(i), bidi.getRunLimit(i));
      parts[i] = levels[i] % 2 == 0 ? part : new StringBuilder(part).reverse().toString();
    }
    Bidi.reorderVisually(levels, 0, parts, 0, runs);
    StringBuilder line = new StringBuilder(text.length());
    for (Object part : parts) {
      line.append(part);
    }
    return line.toString();
  }
}
