package dev.filmward.intake;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A way of writing points in time: {@code iso}, {@code epoch-seconds}, {@code epoch-milliseconds},
 * {@code serial-days} (days since 1899-12-30, as spreadsheets count; to the second), or a pattern
 * such as {@code dd.MM.yyyy HH:mm:ss} in the letters of {@link DateTimeFormatter}.
 *
 * <p>After seconds there may be a fraction; at the end there may be an offset. Names of months are
 * read in English and German. A date that is not in the calendar is none. Immutable.
 */
public final class TimePattern {
  public static final String ISO = "iso";
  public static final String EPOCH_SECONDS = "epoch-seconds";
  public static final String EPOCH_MILLISECONDS = "epoch-milliseconds";
  public static final String SERIAL_DAYS = "serial-days";

  private static final int LONGEST = 64;
  private static final LocalDateTime SERIAL_ZERO = LocalDateTime.of(1899, 12, 30, 0, 0);
  private static final BigDecimal BILLION = BigDecimal.valueOf(1_000_000_000);
  private static final BigDecimal LATEST_S = BigDecimal.valueOf(250_000_000_000L);
  private static final Pattern NUMBER = Pattern.compile("-?[0-9]{1,18}([.,][0-9]{1,18})?");
  private static final Pattern WORD = Pattern.compile("\\p{L}{3,}\\.?");
  private static final Map<String, String> MONTHS =
      Map.of("mär", "mar", "mrz", "mar", "mae", "mar", "mai", "may", "okt", "oct", "dez", "dec");

  private final Function<String, Optional<Moment>> reader;

  private TimePattern(Function<String, Optional<Moment>> reader) {
    this.reader = reader;
  }

  /**
   * A point in time as it is written.
   *
   * @param offset null where only the place knows
   */
  public record Moment(LocalDateTime local, @Nullable ZoneOffset offset) {}

  /**
   * Reads a pattern.
   *
   * @throws IllegalArgumentException saying what is wrong with it
   */
  public static TimePattern of(String pattern) {
    return switch (pattern) {
      case ISO -> new TimePattern(TimePattern::iso);
      case EPOCH_SECONDS -> new TimePattern(text -> epoch(text, 1000));
      case EPOCH_MILLISECONDS -> new TimePattern(text -> epoch(text, 1));
      case SERIAL_DAYS -> new TimePattern(TimePattern::serial);
      default -> letters(pattern);
    };
  }

  /** What a text says; empty where it is not of this pattern. */
  public Optional<Moment> read(String text) {
    return text.isEmpty() || text.length() > LONGEST ? Optional.empty() : reader.apply(text);
  }

  private static Optional<Moment> iso(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    TimeText time = new TimeText();
    return time.read(bytes, 0, bytes.length)
        ? Optional.of(
            new Moment(
                time.local(), time.hasOffset() ? ZoneOffset.ofTotalSeconds(time.offsetS()) : null))
        : Optional.empty();
  }

  private static Optional<Moment> epoch(String text, int milliseconds) {
    return number(text)
        .map(value -> value.multiply(BigDecimal.valueOf(milliseconds)).movePointRight(6))
        .flatMap(nanos -> after(LocalDateTime.of(1970, 1, 1, 0, 0), nanos))
        .map(local -> new Moment(local, ZoneOffset.UTC));
  }

  private static Optional<Moment> serial(String text) {
    return number(text)
        .map(days -> days.multiply(BigDecimal.valueOf(86_400)).setScale(0, RoundingMode.HALF_UP))
        .flatMap(seconds -> after(SERIAL_ZERO, seconds.movePointRight(9)))
        .map(local -> new Moment(local, null));
  }

  private static Optional<LocalDateTime> after(LocalDateTime zero, BigDecimal nanos) {
    BigDecimal[] parts = nanos.divideToIntegralValue(BigDecimal.ONE).divideAndRemainder(BILLION);
    if (parts[0].abs().compareTo(LATEST_S) > 0) {
      return Optional.empty();
    }
    return Optional.of(zero.plusSeconds(parts[0].longValue()).plusNanos(parts[1].longValue()));
  }

  private static Optional<BigDecimal> number(String text) {
    return NUMBER.matcher(text).matches()
        ? Optional.of(new BigDecimal(text.replace(',', '.')))
        : Optional.empty();
  }

  private static TimePattern letters(String pattern) {
    String letters = pattern.replaceAll("'[^']*'", "");
    if (!letters.matches("(?s).*[yu].*") || !letters.contains("M") || !letters.contains("d")) {
      throw new IllegalArgumentException(
          Words.quoted(pattern)
              + " is no pattern of dates; write iso, or year, month and day as in dd.MM.yyyy"
              + " HH:mm:ss");
    }
    DateTimeFormatter formatter = formatter(pattern, letters);
    boolean named = letters.contains("MMM");
    return new TimePattern(text -> parse(formatter, named ? withEnglishMonth(text) : text));
  }

  private static DateTimeFormatter formatter(String pattern, String letters) {
    DateTimeFormatterBuilder builder = new DateTimeFormatterBuilder().parseCaseInsensitive();
    try {
      builder.appendPattern(pattern.replace('y', 'u').replaceAll("MMM+", "MMM"));
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException(
          Words.quoted(pattern) + " is no pattern of dates: " + e.getMessage(), e);
    }
    if (letters.endsWith("s")) {
      builder.appendPattern("[.][,]");
      builder.appendFraction(ChronoField.NANO_OF_SECOND, 0, 9, false);
    }
    if (!letters.matches("(?s).*[XxZOVz].*")) {
      builder.appendPattern("[ ][XXX][XX][X]");
    }
    if (!letters.matches("(?s).*[HhKk].*")) {
      builder.parseDefaulting(ChronoField.SECOND_OF_DAY, 0);
    }
    return builder.toFormatter(Locale.US).withResolverStyle(ResolverStyle.STRICT);
  }

  private static Optional<Moment> parse(DateTimeFormatter formatter, String text) {
    try {
      TemporalAccessor time = formatter.parseBest(text, OffsetDateTime::from, LocalDateTime::from);
      return Optional.of(
          time instanceof OffsetDateTime offset
              ? new Moment(offset.toLocalDateTime(), offset.getOffset())
              : new Moment(LocalDateTime.from(time), null));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private static String withEnglishMonth(String text) {
    return WORD.matcher(text).replaceAll(TimePattern::month);
  }

  private static String month(MatchResult word) {
    String start = word.group().substring(0, 3).toLowerCase(Locale.ROOT);
    return MONTHS.getOrDefault(start, start);
  }
}
