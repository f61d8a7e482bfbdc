package dev.filmward.film;

import java.util.Comparator;
import java.util.Locale;

/**
 * What is charted: one reported layer, the total of all, or a layer's share of the total.
 *
 * @param position of the reported layer from 1; 0 for the total
 * @param name the layer's name; {@code Total} for the total
 */
public record Characteristic(Kind kind, int position, String name)
    implements Comparable<Characteristic> {

  /** In the order in which characteristics of a structure are listed. */
  public enum Kind {
    LAYER,
    TOTAL,
    SHARE;

    /** As written in files and addresses. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private static final Comparator<Characteristic> ORDER =
      Comparator.comparing(Characteristic::kind)
          .thenComparingInt(Characteristic::position)
          .thenComparing(Characteristic::name);

  public Characteristic {
    if (kind == Kind.TOTAL ? position != 0 : !(position >= 1)) {
      throw new IllegalArgumentException("a " + kind.word() + " cannot have position " + position);
    }
  }

  public static Characteristic layer(ReportedLayer layer) {
    return new Characteristic(Kind.LAYER, layer.position(), layer.name());
  }

  public static Characteristic total() {
    return new Characteristic(Kind.TOTAL, 0, "Total");
  }

  public static Characteristic share(ReportedLayer layer) {
    return new Characteristic(Kind.SHARE, layer.position(), layer.name());
  }

  @Override
  public int compareTo(Characteristic other) {
    return ORDER.compare(this, other);
  }
}
