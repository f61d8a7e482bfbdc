package dev.filmward.intake;

import dev.filmward.film.Structures;
import java.util.ArrayList;
import java.util.List;

/**
 * Decides what each column of a file holds, from all of its headings together. A file with a {@code
 * layer} or a thickness column is in the long layout, any other in the wide one.
 */
final class Columns {
  private static final List<Field> ALWAYS =
      List.of(Field.TAKEN_AT, Field.LINE, Field.STRUCTURE, Field.ROLL, Field.SAMPLE, Field.LANE);

  private final String where;
  private final List<Heading> headings;
  private final Layout layout;

  /**
   * @param where the headings stand, as refusals should begin
   */
  Columns(String where, List<Heading> headings) {
    this.where = where;
    this.headings = headings;
    boolean isLong = headings.stream().anyMatch(h -> h.is(Field.LAYER) || h.isThickness());
    this.layout = isLong ? Layout.LONG : Layout.WIDE;
  }

  Layout layout() {
    return layout;
  }

  /** The columns in the order of the file. */
  List<Column> plan(Structures structures) throws FileRefused {
    List<Field> fields = new ArrayList<>(ALWAYS);
    if (layout == Layout.LONG) {
      fields.add(Field.LAYER);
    }
    requireOnce(fields);
    List<Column> lengths =
        layout == Layout.LONG
            ? List.of(thickness())
            : new LayerColumns(where, headings, structures).plan();
    Column[] columns = headings.stream().map(Heading::plain).toArray(Column[]::new);
    lengths.forEach(column -> columns[column.number() - 1] = column);
    return List.of(columns);
  }

  private void requireOnce(List<Field> fields) throws FileRefused {
    List<String> texts =
        headings.stream().filter(heading -> !heading.isKnown()).map(Heading::text).toList();
    for (Field field : fields) {
      List<Heading> with = headings.stream().filter(heading -> heading.is(field)).toList();
      if (with.isEmpty()) {
        String nearest =
            Nearest.to(field.heading(), texts)
                .map(text -> "; the nearest heading is " + Words.quoted(text))
                .orElse("");
        throw new FileRefused(
            where + "the column " + Words.quoted(field.heading()) + " is missing" + nearest);
      }
      refuseSecond(with);
    }
    refuseSecond(headings.stream().filter(each -> each.is(Field.TEMPERATURE_C)).toList());
  }

  private void refuseSecond(List<Heading> same) throws FileRefused {
    if (same.size() > 1) {
      throw new FileRefused(
          where
              + "columns "
              + same.get(0).number()
              + " and "
              + same.get(1).number()
              + " are both headed "
              + Words.quoted(same.get(0).text())
              + "; leave one of them out");
    }
  }

  private Column thickness() throws FileRefused {
    List<Heading> all = headings.stream().filter(Heading::isThickness).toList();
    List<Column> columns = all.stream().flatMap(heading -> heading.thickness().stream()).toList();
    if (all.isEmpty()) {
      throw new FileRefused(
          where + "the thickness column is missing; head it thickness_um, or with another unit");
    }
    if (columns.isEmpty()) {
      throw new FileRefused(where + all.get(0).withoutUnit());
    }
    if (columns.size() > 1) {
      throw new FileRefused(
          where
              + Words.quoted(columns.get(0).heading())
              + " and "
              + Words.quoted(columns.get(1).heading())
              + " are both thicknesses; leave one of them out");
    }
    return columns.get(0);
  }
}
