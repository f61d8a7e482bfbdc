package dev.filmward.film;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A length written with its unit, as in a structures file: {@code 14 um}, {@code 0.6 mil}.
 *
 * <p>A length always carries its unit; a bare number is refused, not guessed. Finite; may be
 * negative only where the context allows it (the context checks). Immutable.
 */
public record Length(double micrometres) {
  private static final Pattern FORM =
      Pattern.compile("([-+]?[0-9.]+(?:[eE][-+]?[0-9]+)?)\\s*(\\D+)");

  public Length {
    if (!Double.isFinite(micrometres)) {
      throw new IllegalArgumentException("a length must be finite, not " + micrometres);
    }
  }

  /**
   * Reads a number and its unit.
   *
   * @throws IllegalArgumentException saying what was found and what is expected
   */
  public static Length parse(String text) {
    Matcher matcher = FORM.matcher(text.strip());
    if (!matcher.matches()) {
      throw new IllegalArgumentException(expected(text));
    }
    LengthUnit unit =
        LengthUnit.parse(matcher.group(2))
            .orElseThrow(() -> new IllegalArgumentException(expected(text)));
    try {
      return new Length(unit.toUm(Double.parseDouble(matcher.group(1))));
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException(expected(text), e);
    }
  }

  private static String expected(String text) {
    return "\""
        + text
        + "\" is not a length; write a number and its unit (um, mm, mil or in),"
        + " for example 14 um";
  }
}
