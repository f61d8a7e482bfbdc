package dev.filmward.intake;

import java.util.regex.Pattern;

/**
 * Reads a thickness as it is written in a file: a number with a decimal point or a decimal comma,
 * or a sign for "not measured" (nothing, {@code NaN} or a dash).
 *
 * <p>Thousands separators are not read: with both signs in one number, or one twice, it is no
 * number. The value is the double nearest to what is written. Up to 2^53 the digits are an exact
 * double, as is a power of ten up to 10^22, so one division rounds correctly (Clinger, How to read
 * floating point numbers accurately, PLDI 1990); all else goes through {@link Double#parseDouble}.
 * One owner, one thread.
 */
final class Decimals {

  /** What a field turned out to hold. */
  enum Kind {
    NUMBER,
    MISSING,
    NO_NUMBER,
    NOT_FINITE
  }

  /** Of {@link #plain}: look again with {@link #read}. */
  static final double NOT_PLAIN = -1;

  private static final Pattern MISSING = Pattern.compile("(?i)|nan|[-\u2013\u2014]");
  private static final Pattern INFINITE = Pattern.compile("(?i)[-+]?(inf|infinity|\u221e)");
  private static final Pattern NUMBER =
      Pattern.compile("[-+]?+([0-9]++([.,][0-9]*+)?+|[.,][0-9]++)([eE][-+]?+[0-9]++)?+");
  private static final long EXACT = 1L << 53;
  private static final int LONGEST_PLAIN = 18;
  private static final double[] POWERS_OF_TEN = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18
  };

  private int stop;
  private double value;

  /** A bit for each decimal sign below 64; bit 0 for none. */
  private long signsSeen;

  /** The value of a positive number that is written in at most 18 signs, or NOT_PLAIN. */
  double plain(byte[] bytes, int start, int end) {
    long digits = 0;
    int last = end - 1;
    int point = last;
    byte pointSign = 0;
    for (int i = start; i < end; i++) {
      int digit = bytes[i] - '0';
      if (digit >= 0 && digit <= 9) {
        digits = digits * 10 + digit;
      } else if (pointSign == 0 && (bytes[i] == '.' || bytes[i] == ',')) {
        point = i;
        pointSign = bytes[i];
      } else {
        return NOT_PLAIN;
      }
    }
    if (end - start > LONGEST_PLAIN || digits == 0 || digits > EXACT) {
      return NOT_PLAIN;
    }
    remember(pointSign);
    return digits / POWERS_OF_TEN[last - point];
  }

  /**
   * The value of a positive number at the start of some bytes, of at most 18 signs with one after
   * them that is neither digit nor point; else NOT_PLAIN. {@link #stop} then tells where it ends.
   *
   * @param comma what may stand for the decimal point besides it
   */
  double leading(byte[] bytes, int start, byte comma) {
    long digits = 0;
    int end = start;
    int decimals = 0;
    int afterPoint = 0;
    int pointSign = 0;
    for (; ; end++) {
      byte sign = bytes[end];
      if (sign >= '0' && sign <= '9') {
        digits = digits * 10 + (sign - '0');
        decimals += afterPoint;
      } else if ((sign == '.' || sign == comma) && afterPoint == 0) {
        afterPoint = 1;
        pointSign = sign;
      } else {
        break;
      }
    }
    stop = end;
    if (end - start > LONGEST_PLAIN || digits == 0 || digits > EXACT) {
      return NOT_PLAIN;
    }
    remember(pointSign);
    return digits / POWERS_OF_TEN[decimals];
  }

  /** Where {@link #leading} stopped. */
  int stop() {
    return stop;
  }

  /** Looks at any field; after NUMBER, {@link #value} is what it says. */
  Kind read(String text) {
    if (MISSING.matcher(text).matches()) {
      return Kind.MISSING;
    }
    if (INFINITE.matcher(text).matches()) {
      return Kind.NOT_FINITE;
    }
    if (!NUMBER.matcher(text).matches()) {
      return Kind.NO_NUMBER;
    }
    value = Double.parseDouble(text.replace(',', '.'));
    remember(text.indexOf(',') >= 0 ? ',' : text.indexOf('.') >= 0 ? '.' : 0);
    return Double.isInfinite(value) ? Kind.NOT_FINITE : Kind.NUMBER;
  }

  double value() {
    return value;
  }

  /** Whether a number was written with a decimal point. */
  boolean sawPoint() {
    return saw('.');
  }

  /** Whether a number was written with a decimal comma. */
  boolean sawComma() {
    return saw(',');
  }

  private boolean saw(char sign) {
    return (signsSeen >>> sign & 1) != 0;
  }

  private void remember(int sign) {
    signsSeen |= 1L << sign;
  }
}
