package dev.filmward.report.paper;

import dev.filmward.report.CharacteristicWeek;
import java.util.OptionalDouble;

/**
 * How the values of a characteristic are written: lengths in um as they are, shares in percent.
 * Immutable.
 *
 * @param decimals of a value; a spread has one more
 */
record Measure(String unit, double factor, int decimals) {
  private static final Measure LENGTH = new Measure("µm", 1, 2);
  private static final Measure SHARE = new Measure("%", 100, 2);

  static Measure of(CharacteristicWeek each) {
    return each.isShare() ? SHARE : LENGTH;
  }

  OptionalDouble shown(OptionalDouble value) {
    return value.isPresent() ? OptionalDouble.of(value.getAsDouble() * factor) : value;
  }

  /** NaN where there is nothing, for drawings. */
  double drawn(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() * factor : Double.NaN;
  }

  Cell cell(OptionalDouble value, Texts texts) {
    return Cell.number(shown(value), decimals, texts);
  }

  Cell spread(OptionalDouble value, Texts texts) {
    return Cell.number(shown(value), decimals + 1, texts);
  }
}
