package dev.filmward.film;

import java.util.Comparator;

/** What a sample is known by, whatever file its rows came in. */
public record SampleKey(String line, String structure, String roll, String sample)
    implements Comparable<SampleKey> {
  private static final Comparator<SampleKey> ORDER =
      Comparator.comparing(SampleKey::line)
          .thenComparing(SampleKey::structure)
          .thenComparing(SampleKey::roll)
          .thenComparing(SampleKey::sample);

  @Override
  public int compareTo(SampleKey other) {
    return ORDER.compare(this, other);
  }
}
