package dev.filmward.intake;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * How a file with headings of its own is read: where each field comes from, which columns hold
 * thicknesses, and how numbers and times are written. Immutable; {@link MappingFile} reads and
 * checks one.
 *
 * @param name for people, also the name it is kept under
 * @param sources of every field but the thickness; LAYER and LANE only where the columns do not say
 * @param missing what stands where nothing was measured, besides nothing, {@code NaN} and a dash
 * @param yaml as it was written
 */
public record Mapping(
    String name,
    FileForm form,
    Map<Field, Source> sources,
    TimeForm time,
    List<ValueColumn> values,
    Set<String> missing,
    String yaml) {

  public Mapping {
    sources = Map.copyOf(new EnumMap<>(sources));
    values = List.copyOf(values);
    missing = Set.copyOf(missing);
    if (values.isEmpty()) {
      throw new IllegalArgumentException("no column holds a thickness");
    }
  }

  /**
   * The same for a row by itself: a local time that comes twice is refused where the rows around it
   * would tell which one is meant.
   */
  Mapping forOneRow() {
    TimeForm alone = new TimeForm(time.pattern(), time.zone(), Twice.REFUSE);
    return time.twice() == Twice.ORDER
        ? new Mapping(name, form, sources, alone, values, missing, yaml)
        : this;
  }

  /** The place of a field, which must be there. */
  Source source(Field field) {
    Source source = sources.get(field);
    if (source == null) {
      throw new IllegalStateException(name + " does not say where " + field + " comes from");
    }
    return source;
  }

  /** Whether one reading stands in a row. */
  Layout layout() {
    return values.size() == 1 && sources.containsKey(Field.LAYER) ? Layout.LONG : Layout.WIDE;
  }
}
