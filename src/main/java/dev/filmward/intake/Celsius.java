package dev.filmward.intake;

import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads how warm the film was, in degrees Celsius: a number with one of some decimal signs, with or
 * without its unit, or a sign for "not measured" as in {@link Decimals}. One owner, one thread.
 */
final class Celsius {
  private static final Pattern MISSING = Pattern.compile("(?i)|nan|[-\u2013\u2014]");
  private static final double LEAST = -100;
  private static final double GREATEST = 300;

  private final Pattern number;
  private String last = "";
  private OptionalDouble degrees = OptionalDouble.empty();
  private String reason = "";

  /**
   * @param signs what may stand for the decimal point
   */
  Celsius(String signs) {
    this.number =
        Pattern.compile("(?<number>[-+]?[0-9]{1,4}(?:[" + signs + "][0-9]{0,9})?)\\s*\u00b0?C?");
  }

  /** Whether a text can be used; then {@link #degrees} is what it says, else there is a reason. */
  boolean read(String text) {
    if (!text.equals(last)) {
      last = text;
      look(text.strip());
    }
    return reason.isEmpty();
  }

  /** Empty where it was not measured. */
  OptionalDouble degrees() {
    return degrees;
  }

  /** Why the text that was read last cannot be used. */
  String reason() {
    return reason;
  }

  private void look(String text) {
    degrees = OptionalDouble.empty();
    reason = "";
    if (MISSING.matcher(text).matches()) {
      return;
    }
    Matcher matcher = number.matcher(text);
    if (!matcher.matches()) {
      reason = Reasons.noTemperature(text);
      return;
    }
    double value = Double.parseDouble(matcher.group("number").replace(',', '.'));
    if (value >= LEAST && value <= GREATEST) {
      degrees = OptionalDouble.of(value);
    } else {
      reason = Reasons.noTemperature(text);
    }
  }
}
