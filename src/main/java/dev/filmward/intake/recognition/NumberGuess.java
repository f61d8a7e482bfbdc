package dev.filmward.intake.recognition;

import dev.filmward.intake.DecimalSign;
import dev.filmward.intake.HeadText;
import dev.filmward.intake.Separator;
import dev.filmward.intake.Thousands;
import dev.filmward.intake.Words;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * How the thicknesses of a file are written: decimal sign, sign for thousands, and what stands
 * where nothing was measured. {@code 12,5} tells the sign; {@code 1,234} does not, unless fields
 * are separated by semicolons or tabs, as is done where the comma is the decimal sign. Immutable.
 *
 * @param decimal empty where only a person can know
 * @param unitsInCells whether every number is followed by a unit
 */
record NumberGuess(
    Optional<DecimalSign> decimal,
    String reason,
    Thousands thousands,
    Set<String> missing,
    boolean unitsInCells) {

  private static final Set<String> MEANS_MISSING =
      Set.of(
          "ol",
          "o.l.",
          "ovl",
          "ovr",
          "over",
          "overload",
          "n/a",
          "na",
          "#n/a",
          "#nv",
          "k.a.",
          "null",
          "none",
          "nil",
          "n.m.",
          "nm",
          "err",
          "error",
          "fehler",
          "--",
          "---",
          "----",
          "*",
          "**",
          "***",
          "****",
          "?",
          "fehlt",
          "leer",
          "missing",
          "no echo",
          "kein echo",
          "n.a.",
          ".",
          "x");
  private static final Pattern MISSING_ANYWAY = Pattern.compile("(?i)|nan|[-\u2013\u2014]");
  private static final Pattern WITH_UNIT =
      Pattern.compile("([-+]?[0-9][0-9.,' ]*)\\s*([\\p{L}\u00b5\"]+)");
  private static final Pattern NUMBER =
      Pattern.compile("[-+]?[0-9.,' \u2019]*[0-9]([eE][-+]?[0-9]+)?[.,]?");
  private static final Pattern COMMA_LAST = Pattern.compile("[^,]*\\.[^,]*,[0-9]*");
  private static final Pattern POINT_LAST = Pattern.compile("[^.]*,[^.]*\\.[0-9]*");
  private static final Pattern DOUBTFUL_COMMA = Pattern.compile("[-+]?[1-9][0-9]{0,2},[0-9]{3}");

  static NumberGuess of(List<String> cells, Separator separator, Map<String, String> answers) {
    List<String> numbers = new ArrayList<>();
    Set<String> missing = new LinkedHashSet<>();
    int withUnit = 0;
    for (String cell : cells) {
      String plain = HeadText.plain(cell);
      if (WITH_UNIT.matcher(plain).matches()
          && !MEANS_MISSING.contains(plain.toLowerCase(Locale.ROOT))) {
        withUnit++;
        numbers.add(WITH_UNIT.matcher(plain).replaceFirst("$1").strip());
      } else if (NUMBER.matcher(plain).matches()) {
        numbers.add(plain);
      } else if (!MISSING_ANYWAY.matcher(plain).matches()
          && MEANS_MISSING.contains(plain.toLowerCase(Locale.ROOT))) {
        missing.add(plain);
      }
    }
    boolean inCells = withUnit > 0 && withUnit == numbers.size();
    Sign sign = sign(numbers, separator, answers);
    return new NumberGuess(
        sign.decimal, sign.reason, thousands(numbers, sign.decimal), missing, inCells);
  }

  private record Sign(Optional<DecimalSign> decimal, String reason) {}

  private static Sign sign(List<String> numbers, Separator separator, Map<String, String> answers) {
    if (answers.containsKey("decimal")) {
      boolean comma = "comma".equals(answers.get("decimal"));
      return new Sign(Optional.of(comma ? DecimalSign.COMMA : DecimalSign.POINT), "as you said");
    }
    Optional<String> commaLast = first(numbers, COMMA_LAST);
    Optional<String> pointLast = first(numbers, POINT_LAST);
    if (commaLast.isPresent() != pointLast.isPresent()) {
      String seen = commaLast.or(() -> pointLast).orElse("");
      return decided(
          commaLast.isPresent() ? DecimalSign.COMMA : DecimalSign.POINT, "from " + quoted(seen));
    }
    List<String> commas = numbers.stream().filter(n -> n.indexOf(',') >= 0).toList();
    Optional<String> clear =
        commas.stream().filter(n -> !DOUBTFUL_COMMA.matcher(n).matches()).findFirst();
    boolean points = numbers.stream().anyMatch(n -> n.indexOf('.') >= 0);
    if (commas.isEmpty()) {
      boolean german = !points && separator == Separator.SEMICOLON;
      return decided(
          german ? DecimalSign.COMMA : DecimalSign.POINT,
          points ? "no number has a comma" : "no number has a decimal sign");
    }
    if (clear.isPresent() && !points) {
      return decided(DecimalSign.COMMA, "from " + quoted(clear.get()));
    }
    if (!points && separator != Separator.COMMA) {
      return decided(
          DecimalSign.COMMA,
          "fields are separated by "
              + separator.words()
              + ", as where the comma is the decimal sign");
    }
    return new Sign(
        Optional.empty(),
        points
            ? "some numbers have a comma and some a point"
            : quoted(commas.get(0)) + " may be either");
  }

  private static Sign decided(DecimalSign sign, String reason) {
    return new Sign(Optional.of(sign), reason);
  }

  private static Optional<String> first(List<String> numbers, Pattern pattern) {
    return numbers.stream().filter(n -> pattern.matcher(n).matches()).findFirst();
  }

  private static Thousands thousands(List<String> numbers, Optional<DecimalSign> decimal) {
    if (numbers.stream().anyMatch(n -> n.matches("[-+]?[0-9]{1,3}( [0-9]{3})+([.,][0-9]*)?"))) {
      return Thousands.SPACE;
    }
    if (numbers.stream().anyMatch(n -> n.indexOf('\'') >= 0 || n.indexOf('\u2019') >= 0)) {
      return Thousands.APOSTROPHE;
    }
    boolean both = numbers.stream().anyMatch(n -> n.indexOf('.') >= 0 && n.indexOf(',') >= 0);
    if (!both || decimal.isEmpty()) {
      return Thousands.NONE;
    }
    return decimal.get() == DecimalSign.COMMA ? Thousands.POINT : Thousands.COMMA;
  }

  private static String quoted(String number) {
    return Words.quoted(number);
  }
}
