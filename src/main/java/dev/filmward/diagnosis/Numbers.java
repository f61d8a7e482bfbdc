package dev.filmward.diagnosis;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Writes numbers for people: three digits that count, no exponent for what is not tiny. */
final class Numbers {
  private static final MathContext DIGITS = new MathContext(3, RoundingMode.HALF_EVEN);

  private Numbers() {}

  static String of(double value) {
    if (!Double.isFinite(value)) {
      return value > 0 ? "infinite" : Double.toString(value);
    }
    BigDecimal rounded = new BigDecimal(value).round(DIGITS).stripTrailingZeros();
    if (value != 0 && Math.abs(value) < 1e-3) {
      return rounded.toString();
    }
    return rounded.toPlainString();
  }

  /** With one decimal and always a sign. */
  static String signed(double value) {
    BigDecimal rounded = new BigDecimal(value).setScale(1, RoundingMode.HALF_EVEN);
    return rounded.signum() < 0 ? "\u2212" + rounded.negate() : "+" + rounded;
  }
}
