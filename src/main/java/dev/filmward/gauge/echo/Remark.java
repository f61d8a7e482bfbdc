package dev.filmward.gauge.echo;

import java.util.Locale;

/**
 * What a person should know about a set-up.
 *
 * @param place which layer or boundary, or the gauge
 */
public record Remark(Weight weight, String place, String words) {
  /** The place of what concerns all layers. */
  static final String GAUGE = "Gauge";

  /** How much it matters. */
  public enum Weight {
    /** It cannot work like this. */
    WRONG,
    /** Look at it. */
    LOOK,
    /** Good to know. */
    NOTE
  }

  static Remark wrong(String place, String words, Object... values) {
    return of(Weight.WRONG, place, words, values);
  }

  static Remark look(String place, String words, Object... values) {
    return of(Weight.LOOK, place, words, values);
  }

  static Remark note(String place, String words, Object... values) {
    return of(Weight.NOTE, place, words, values);
  }

  /** Values are filled in as {@link String#format} does; texts from files come as values. */
  private static Remark of(Weight weight, String place, String words, Object... values) {
    return new Remark(weight, place, String.format(Locale.ROOT, words, values));
  }
}
