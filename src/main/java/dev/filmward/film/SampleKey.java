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

  // written out, since samples are compared by the hundred thousand
  @Override
  public boolean equals(Object other) {
    return other instanceof SampleKey that
        && sample.equals(that.sample)
        && roll.equals(that.roll)
        && structure.equals(that.structure)
        && line.equals(that.line);
  }

  @Override
  public int hashCode() {
    return ((line.hashCode() * 31 + structure.hashCode()) * 31 + roll.hashCode()) * 31
        + sample.hashCode();
  }

  @Override
  public int compareTo(SampleKey other) {
    return ORDER.compare(this, other);
  }
}
