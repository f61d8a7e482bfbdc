package dev.filmward.intake;

import dev.filmward.film.LengthUnit;
import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Reads a thickness as a mapping says that it is written. Only its decimal sign and its sign for
 * thousands count: {@code 12,5} is no number where the mapping says point. A unit may follow the
 * number; it must be the one of the column, and must be there where the column has none. One owner,
 * one thread.
 */
final class MappedNumber {

  /** What a cell turned out to hold. */
  enum Kind {
    NUMBER,
    MISSING,
    FAULT
  }

  private static final Pattern MISSING = Pattern.compile("(?i)|nan|[-\u2013\u2014]");
  private static final Pattern UNIT =
      Pattern.compile("(?<number>[^\\p{L}\u00b5\"]*[0-9.,])\\s*(?<unit>[\\p{L}\u00b5\"]+)");
  private static final int LONGEST = 60;
  private static final double LARGEST_UM = 1e100;

  private final DecimalSign decimal;
  private final Pattern number;
  private final Pattern grouped;
  private final Pattern group;
  private final Set<String> tokens;

  private double um;
  private String reason = "";

  MappedNumber(FileForm form, Collection<String> missing) {
    this.decimal = form.decimal();
    String sign = Pattern.quote(String.valueOf(decimal.sign()));
    this.number =
        Pattern.compile(
            "[-+]?+([0-9]++(" + sign + "[0-9]*+)?+|" + sign + "[0-9]++)([eE][-+]?+[0-9]++)?+");
    String between = form.thousands() == Thousands.NONE ? "(?!)" : signs(form.thousands());
    this.group = Pattern.compile(between);
    this.grouped =
        Pattern.compile("[-+]?[1-9][0-9]{0,2}(?:" + between + "[0-9]{3})+(?:" + sign + "[0-9]*)?");
    this.tokens =
        missing.stream().map(token -> token.toLowerCase(Locale.ROOT)).collect(Collectors.toSet());
  }

  private static String signs(Thousands thousands) {
    return "[" + thousands.signs() + "]";
  }

  /** Reads a cell of a column; {@link #um} or {@link #reason} tell the rest. */
  Kind read(String cell, Optional<LengthUnit> unitOfColumn) {
    String text = cell.strip();
    if (MISSING.matcher(text).matches() || tokens.contains(text.toLowerCase(Locale.ROOT))) {
      return Kind.MISSING;
    }
    if (text.length() > LONGEST) {
      return fault(Reasons.noNumber(text));
    }
    Matcher withUnit = UNIT.matcher(text);
    Optional<LengthUnit> unit = unitOfColumn;
    if (withUnit.matches()) {
      Optional<LengthUnit> said = Units.parse(withUnit.group("unit"));
      if (said.isEmpty()) {
        return fault(Reasons.noNumber(cell));
      }
      if (unit.isPresent() && !unit.equals(said)) {
        return fault(otherUnit(cell, unit.get()));
      }
      text = withUnit.group("number").strip();
      unit = said;
    }
    return unit.isEmpty() ? fault(noUnit(cell)) : number(text, cell, unit.get());
  }

  /** Only after NUMBER. */
  double um() {
    return um;
  }

  /** Only after FAULT. */
  String reason() {
    return reason;
  }

  private Kind number(String text, String cell, LengthUnit unit) {
    String plain = grouped.matcher(text).matches() ? group.matcher(text).replaceAll("") : text;
    if (!number.matcher(plain).matches()) {
      return fault(notWritten(cell));
    }
    um = Double.parseDouble(plain.replace(decimal.sign(), '.')) * unit.micrometres();
    if (!(um > 0)) {
      return fault(Reasons.notAboveZero(cell));
    }
    if (Double.isInfinite(um)) {
      return fault(Reasons.notFinite(cell));
    }
    return um > LARGEST_UM ? fault(Reasons.tooLarge(cell)) : Kind.NUMBER;
  }

  private Kind fault(String why) {
    reason = why;
    return Kind.FAULT;
  }

  private String notWritten(String cell) {
    boolean other = cell.indexOf(decimal == DecimalSign.POINT ? ',' : '.') >= 0;
    return other
        ? Words.quoted(cell)
            + " is not a number with a decimal "
            + decimal.name().toLowerCase(Locale.ROOT)
            + ", as the mapping says; leave it empty where nothing was measured"
        : Reasons.noNumber(cell);
  }

  private static String otherUnit(String cell, LengthUnit unit) {
    return Words.quoted(cell) + " is not in " + unit.symbol() + ", as the mapping says";
  }

  private static String noUnit(String cell) {
    return Words.quoted(cell) + " does not say its unit; the mapping says that every cell does";
  }
}
