package dev.filmward.intake;

import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Finds the position of a reported layer of one structure by what a file calls it: the position
 * itself, or the name. A number that is a position is one, whatever the layers are named. One
 * owner, one thread.
 */
final class LayerNames {
  static final int NONE = 0;
  private static final int MOST_TRIED = 32;

  private final byte[][] names;
  private final Map<String, Integer> positions = new HashMap<>();
  private int last = 1;

  LayerNames(Structure structure) {
    List<ReportedLayer> reported = structure.reported();
    this.names = new byte[reported.size()][];
    for (ReportedLayer layer : reported) {
      names[layer.position() - 1] = layer.name().getBytes(StandardCharsets.UTF_8);
      positions.put(layer.name(), layer.position());
    }
  }

  /** The position from 1, or NONE. */
  int position(Row row, int field) {
    int number = number(row, field);
    if (number >= 1 && number <= names.length) {
      return number;
    }
    for (int i = 0; i < Math.min(names.length, MOST_TRIED); i++) {
      int position = (last + i - 1) % names.length + 1;
      byte[] name = names[position - 1];
      if (row.holds(field, name, name.length)) {
        last = position;
        return position;
      }
    }
    return positions.getOrDefault(row.text(field), NONE);
  }

  private static int number(Row row, int field) {
    int start = row.from + row.start[field];
    int end = row.from + row.end[field];
    int value = 0;
    for (int i = start; i < end; i++) {
      int digit = row.bytes[i] - '0';
      if (digit < 0 || digit > 9 || value > 100_000) {
        return NONE;
      }
      value = value * 10 + digit;
    }
    return value;
  }
}
