package dev.filmward.film;

import java.util.Locale;
import java.util.Optional;

/**
 * A unit of length that a gauge may export, with its exact size in micrometres.
 *
 * <p>1 in = 25.4 mm exactly and 1 mil = 0.001 in (NIST Special Publication 811, appendix B.8).
 */
public enum LengthUnit {
  UM("um", 1.0),
  MM("mm", 1000.0),
  MIL("mil", 25.4),
  IN("in", 25_400.0);

  private final String symbol;
  private final double micrometres;

  LengthUnit(String symbol, double micrometres) {
    this.symbol = symbol;
    this.micrometres = micrometres;
  }

  public String symbol() {
    return symbol;
  }

  /** How many micrometres one of this unit is. */
  public double micrometres() {
    return micrometres;
  }

  public double toUm(double value) {
    return value * micrometres;
  }

  /**
   * Recognises {@code um}, {@code mm}, {@code mil} and {@code in} in any case, and the micro sign
   * (U+00B5) or the Greek letter mu (U+03BC) for the {@code u}.
   */
  public static Optional<LengthUnit> parse(String text) {
    String plain =
        text.strip().toLowerCase(Locale.ROOT).replace('\u00b5', 'u').replace('\u03bc', 'u');
    for (LengthUnit unit : values()) {
      if (unit.symbol.equals(plain)) {
        return Optional.of(unit);
      }
    }
    return Optional.empty();
  }
}
