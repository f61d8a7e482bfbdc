package dev.filmward.intake.recognition;

import dev.filmward.film.LengthUnit;
import dev.filmward.intake.Units;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A heading apart from its unit: {@code Dicke [um]}, {@code Thickness, mil}, {@code layer_1_um}.
 * Immutable.
 *
 * @param text what remains
 * @param unit of length, if it names one
 */
record HeadingParts(String text, Optional<LengthUnit> unit) {
  private static final Pattern BRACKETS = Pattern.compile("[\\[(]\\s*([^\\[\\]()]*?)\\s*[\\])]");
  private static final Pattern TAIL =
      Pattern.compile("(.*?)[\\s_,/]+(?:in\\s+)?([\\p{L}\u00b5\"]+)");

  static HeadingParts of(String heading) {
    Matcher brackets = BRACKETS.matcher(heading);
    while (brackets.find()) {
      Optional<LengthUnit> unit = Units.parse(brackets.group(1));
      if (unit.isPresent()) {
        String rest = heading.substring(0, brackets.start()) + heading.substring(brackets.end());
        return new HeadingParts(rest.strip(), unit);
      }
    }
    Matcher tail = TAIL.matcher(heading);
    if (tail.matches()) {
      Optional<LengthUnit> unit = Units.parse(tail.group(2));
      if (unit.isPresent()) {
        return new HeadingParts(tail.group(1).strip(), unit);
      }
    }
    return new HeadingParts(heading, Optional.empty());
  }
}
