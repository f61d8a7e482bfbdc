package dev.filmward.intake;

import dev.filmward.film.LengthUnit;
import java.util.List;
import java.util.stream.Collectors;

/** How a readings file is written, as its first line or its mapping shows. Immutable. */
public record Dialect(Encoding encoding, Separator separator, Layout layout, List<Column> columns) {

  public Dialect {
    columns = List.copyOf(columns);
    for (int i = 0; i < columns.size(); i++) {
      if (columns.get(i).number() != i + 1) {
        throw new IllegalArgumentException("column " + (i + 1) + " is " + columns.get(i));
      }
    }
    if (columns.stream().noneMatch(Dialect::isThickness)) {
      throw new IllegalArgumentException("no column holds a thickness");
    }
  }

  private static boolean isThickness(Column column) {
    return column.field() == Field.THICKNESS || column.field() == Field.LAYER_THICKNESS;
  }

  /** In words, for a person. */
  public String describe() {
    return encoding.words()
        + ", fields separated by "
        + separator.words()
        + ", "
        + layout.words()
        + ", thickness in "
        + columns.stream()
            .flatMap(column -> column.unit().stream())
            .map(LengthUnit::symbol)
            .distinct()
            .collect(Collectors.joining(" and "));
  }

  /** Columns that hold the thickness of a layer each; none in the long layout. */
  public List<Column> layerColumns() {
    return with(Field.LAYER_THICKNESS);
  }

  /** Columns that are not read. */
  public List<Column> ignoredColumns() {
    return with(Field.IGNORED);
  }

  /** How many places for readings a row has: 1, or the number of layer columns. */
  public int placesInRow() {
    return layout == Layout.LONG ? 1 : layerColumns().size();
  }

  /** Whether a column holds a field. */
  boolean has(Field field) {
    return !with(field).isEmpty();
  }

  /** Index, from 0, of the first column that holds a field. */
  int indexOf(Field field) {
    return with(field).get(0).number() - 1;
  }

  private List<Column> with(Field field) {
    return columns.stream().filter(column -> column.field() == field).toList();
  }
}
