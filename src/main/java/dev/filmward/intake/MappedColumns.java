package dev.filmward.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The columns of a file as a mapping names them: by heading where it stands there once, else by
 * {@code #} and the number. Immutable.
 */
final class MappedColumns {
  private final Mapping mapping;
  private final List<String> headings;

  MappedColumns(Mapping mapping) {
    this.mapping = mapping;
    this.headings = mapping.form().headings();
  }

  /** Index from 0 of a column, or empty. */
  static OptionalInt index(List<String> headings, String name) {
    if (name.matches("#[0-9]{1,4}")) {
      int number = Integer.parseInt(name.substring(1));
      boolean there =
          number >= 1 && number <= headings.size() && !headings.get(number - 1).isEmpty();
      return there ? OptionalInt.of(number - 1) : OptionalInt.empty();
    }
    int first = headings.indexOf(name);
    return first >= 0 && first == headings.lastIndexOf(name)
        ? OptionalInt.of(first)
        : OptionalInt.empty();
  }

  /** Index from 0 of a column that was checked to be there. */
  int index(String name) {
    return index(headings, name).orElseThrow();
  }

  /** All columns of the file, with what they hold. */
  List<Column> all() {
    List<Column> columns = new ArrayList<>();
    for (int i = 0; i < headings.size(); i++) {
      columns.add(column(i));
    }
    return columns;
  }

  private Column column(int index) {
    for (ValueColumn value : mapping.values()) {
      if (index(value.column()) == index) {
        boolean alone = mapping.layout() == Layout.LONG;
        return new Column(
            index + 1,
            headings.get(index),
            alone ? Field.THICKNESS : Field.LAYER_THICKNESS,
            value.unit(),
            OptionalInt.empty(),
            value.layer());
      }
    }
    return plain(index, fieldOf(index));
  }

  private Column plain(int index, Field field) {
    String heading = headings.get(index);
    String shown = heading.isEmpty() ? "#" + (index + 1) : heading;
    return new Column(
        index + 1, shown, field, Optional.empty(), OptionalInt.empty(), Optional.empty());
  }

  private Field fieldOf(int index) {
    return mapping.sources().entrySet().stream()
        .filter(entry -> holds(entry.getValue(), index))
        .map(entry -> entry.getKey())
        .sorted()
        .findFirst()
        .orElse(Field.IGNORED);
  }

  private boolean holds(Source source, int index) {
    return source.kind() == Source.Kind.COLUMN
        && source.names().stream().anyMatch(name -> index(name) == index);
  }
}
