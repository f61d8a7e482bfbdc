package dev.filmward.cli;

import dev.filmward.pipeline.BaselineChoice;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads {@code first:25}, {@code last:25} or two times with offset joined by two dots. */
final class BaselineOption implements ITypeConverter<BaselineChoice> {
  private static final Pattern COUNTED = Pattern.compile("(first|last):([0-9]{1,6})");

  @Override
  public BaselineChoice convert(String text) {
    Matcher counted = COUNTED.matcher(text);
    try {
      if (counted.matches()) {
        int subgroups = Integer.parseInt(counted.group(2));
        return counted.group(1).equals("first")
            ? BaselineChoice.first(subgroups)
            : BaselineChoice.last(subgroups);
      }
      int dots = text.indexOf("..");
      if (dots > 0) {
        return BaselineChoice.between(
            time(text.substring(0, dots)), time(text.substring(dots + 2)));
      }
    } catch (DateTimeException | IllegalArgumentException e) {
      throw new TypeConversionException(expected(text) + " (" + e.getMessage() + ")");
    }
    throw new TypeConversionException(expected(text));
  }

  private static Instant time(String text) {
    return OffsetDateTime.parse(text).toInstant();
  }

  private static String expected(String text) {
    return "\""
        + text
        + "\" is no baseline; write first:25, last:25 or"
        + " 2026-11-18T06:00:00+01:00..2026-11-18T18:00:00+01:00";
  }
}
