package dev.filmward.intake;

import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Finds the reported layer that stands at some place of a file, between quotation marks or not, by
 * its position or by its name; gives up where that takes a closer look. Tried first is the layer
 * after the one before. One owner, one thread.
 */
final class RawLayers {
  static final RawLayers NONE = new RawLayers(new byte[0][], (byte) 0);

  private static final int MOST_TRIED = 32;

  /** Each with its separator; empty where a name needs a closer look. */
  private final byte[][] names;

  private final byte separator;
  private int position;

  private RawLayers(byte[][] names, byte separator) {
    this.names = names;
    this.separator = separator;
  }

  static RawLayers of(Structure structure, byte separator) {
    List<ReportedLayer> reported = structure.reported();
    byte[][] names = new byte[reported.size()][];
    for (int i = 0; i < names.length; i++) {
      String name = reported.get(i).name();
      boolean isPlain =
          !name.isBlank()
              && name.equals(name.strip())
              && !Character.isDigit(name.charAt(0))
              && name.indexOf('"') < 0
              && name.indexOf(separator) < 0;
      String raw = isPlain ? name + (char) separator : "";
      names[i] = raw.getBytes(StandardCharsets.UTF_8);
    }
    return new RawLayers(names, separator);
  }

  /** The position found last. */
  int position() {
    return position;
  }

  /** Where the field after the layer begins, or less than 0. */
  int after(byte[] bytes, int start) {
    boolean quoted = bytes[start] == '"';
    int at = quoted ? start + 1 : start;
    int number = bytes[at] - '0';
    if (number < 1 || number > 9) {
      return quoted ? KnownHead.UNLIKE : named(bytes, start);
    }
    int digit = bytes[++at] - '0';
    if (digit >= 0 && digit <= 9) {
      number = number * 10 + digit;
      at++;
    }
    if (number > names.length || (quoted && bytes[at++] != '"') || bytes[at] != separator) {
      return KnownHead.UNLIKE;
    }
    position = number;
    return at + 1;
  }

  private int named(byte[] bytes, int start) {
    for (int i = 0; i < Math.min(names.length, MOST_TRIED); i++) {
      int candidate = (position + i) % names.length;
      int end = start + names[candidate].length;
      if (end > start && end <= bytes.length && stands(names[candidate], bytes, start)) {
        position = candidate + 1;
        return end;
      }
    }
    return KnownHead.UNLIKE;
  }

  private static boolean stands(byte[] name, byte[] bytes, int start) {
    for (int i = 0; i < name.length; i++) {
      if (bytes[start + i] != name[i]) {
        return false;
      }
    }
    return true;
  }
}
