package dev.filmward.intake;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Where a field of every row comes from. Immutable.
 *
 * @param names of columns, joined by a space where there are several; the key of a line above the
 *     header; the part of the file's name; or the text that is the same for every row
 * @param values what a text of the file stands for; a text that is not among them stands for itself
 */
public record Source(Kind kind, List<String> names, Map<String, String> values) {

  /** Which kind of place it is. */
  public enum Kind {
    COLUMN,
    CONSTANT,
    /** A line above the header, as {@code key: value}. */
    PREAMBLE,
    /** A part of the file's name. */
    FILE,
    /** The sample is known by its time. */
    TAKEN_AT,
    /** Lanes are counted from 1, as the rows of a sample follow each other. */
    COUNTED
  }

  public Source {
    names = List.copyOf(names);
    values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    boolean needsName = kind != Kind.TAKEN_AT && kind != Kind.COUNTED;
    if (needsName == names.isEmpty() || (kind != Kind.COLUMN && names.size() > 1)) {
      throw new IllegalArgumentException(kind + " does not come from " + names);
    }
  }

  public static Source of(Kind kind, String... names) {
    return new Source(kind, List.of(names), Map.of());
  }

  /** What a text of the file stands for. */
  String meaning(String text) {
    return values.getOrDefault(text, text);
  }
}
