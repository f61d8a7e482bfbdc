package dev.filmward.simulate;

import dev.filmward.film.LengthUnit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;

/** How a gauge writes its readings. Immutable. */
record CsvFormat(Layout layout, Times times, Text text, Numerals numerals) {

  CsvFormat {
    if (text.separator() == numerals.decimalSign()) {
      throw new IllegalArgumentException(
          "the decimal sign " + numerals.decimalSign() + " cannot also separate fields");
    }
  }

  /** Whether times carry their offset from UTC. */
  enum Offset {
    WRITTEN("uuuu-MM-dd'T'HH:mm:ssXXX"),
    LEFT_OUT("uuuu-MM-dd'T'HH:mm:ss");

    private final DateTimeFormatter formatter;

    Offset(String pattern) {
      this.formatter = DateTimeFormatter.ofPattern(pattern);
    }
  }

  /** Whose clock the gauge shows. */
  record Times(ZoneId zone, Offset offset) {

    String written(Instant time) {
      return offset.formatter.format(time.atZone(zone));
    }
  }

  /** Bytes, line ends and what stands between two fields. */
  record Text(Encoding encoding, LineEnd lineEnd, char separator) {}

  /**
   * @param unit as written in the headings: {@code um}, {@code µm}, {@code mm}, {@code mil}, {@code
   *     in}
   * @param missing what stands where nothing was measured
   */
  record Numerals(String unit, int decimals, char decimalSign, String missing) {

    Numerals {
      if (LengthUnit.parse(unit).isEmpty()) {
        throw new IllegalArgumentException("\"" + unit + "\" is not um, mm, mil or in");
      }
    }

    String written(double um) {
      double value = um / LengthUnit.parse(unit).orElseThrow().micrometres();
      return new BigDecimal(value)
          .setScale(decimals, RoundingMode.HALF_EVEN)
          .toPlainString()
          .replace('.', decimalSign);
    }
  }
}
