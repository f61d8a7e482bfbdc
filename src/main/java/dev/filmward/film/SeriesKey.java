package dev.filmward.film;

import java.util.Comparator;

/** One chart's worth of data: a characteristic of a structure on a line. */
public record SeriesKey(String line, String structure, Characteristic characteristic)
    implements Comparable<SeriesKey> {
  private static final Comparator<SeriesKey> ORDER =
      Comparator.comparing(SeriesKey::line)
          .thenComparing(SeriesKey::structure)
          .thenComparing(SeriesKey::characteristic);

  @Override
  public int compareTo(SeriesKey other) {
    return ORDER.compare(this, other);
  }
}
