package dev.filmward.intake;

import java.util.List;

/** How a readings file is written, as its first line shows. Immutable. */
public record Dialect(Encoding encoding, Separator separator, Layout layout, List<Column> columns) {

  public Dialect {
    columns = List.copyOf(columns);
  }

  /** In words, for a person. */
  public String describe() {
    return layout + " " + separator.word() + " " + encoding.words();
  }
}
