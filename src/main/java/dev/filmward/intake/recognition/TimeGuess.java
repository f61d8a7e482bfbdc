package dev.filmward.intake.recognition;

import dev.filmward.intake.TimePattern;
import dev.filmward.intake.TimePattern.Moment;
import dev.filmward.intake.Words;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Which patterns read every time of a file, and so which of them are meant. Where the numbers of
 * day and month may be either way in every row, both are kept, for a person to choose. Immutable.
 *
 * @param patterns that read every text; two are never alike in what they read
 * @param reason why the only one is taken
 * @param example a text, and what each pattern makes of it
 */
record TimeGuess(List<String> patterns, String reason, String example) {
  private static final List<String> DATES =
      List.of(
          "d.M.yyyy",
          "dd/MM/yyyy",
          "d/M/yyyy",
          "MM/dd/yyyy",
          "M/d/yyyy",
          "dd-MM-yyyy",
          "d-M-yyyy",
          "MM-dd-yyyy",
          "M-d-yyyy",
          "yyyy-M-d",
          "yyyy/M/d",
          "yyyy.M.d",
          "yyyyMMdd",
          "d.M.yy",
          "d/M/yy",
          "M/d/yy",
          "d-MMM-yyyy",
          "d MMM yyyy",
          "d. MMM yyyy",
          "d-MMM-yy",
          "MMM d, yyyy");
  private static final List<String> TIMES =
      List.of(
          "H:mm:ss",
          "H:mm",
          "h:mm:ss a",
          "h:mm a",
          "h:mm:ssa",
          "h:mma",
          "HHmmss",
          "HHmm",
          "H.mm.ss",
          "H.mm",
          "H'h'mm",
          "H:mm 'Uhr'",
          "H:mm:ss 'Uhr'");
  private static final List<String> BETWEEN = List.of(" ", "'T'", ", ", "_", "-", "' - '", "''");
  private static final Pattern EPOCH = Pattern.compile("[0-9]{10}([.,][0-9]+)?");
  private static final Pattern EPOCH_MS = Pattern.compile("[0-9]{13}");
  private static final Pattern SERIAL = Pattern.compile("[0-9]{5}[.,][0-9]+");
  private static final int MOST_TEXTS = 3000;
  private static final int LEAST_FOR_FAULTS = 20;

  static TimeGuess of(List<String> all) {
    List<String> texts = all.stream().distinct().limit(MOST_TEXTS).toList();
    if (texts.isEmpty()) {
      return new TimeGuess(List.of(), "there is no time", "");
    }
    Optional<TimeGuess> special = special(texts);
    return special.orElseGet(() -> lettered(texts));
  }

  private static Optional<TimeGuess> special(List<String> texts) {
    if (reads(TimePattern.ISO, texts)) {
      return only(TimePattern.ISO, "every time is written as ISO 8601 says");
    }
    if (allMatch(EPOCH, texts) && within2000To2100(TimePattern.EPOCH_SECONDS, texts)) {
      return only(TimePattern.EPOCH_SECONDS, "every time is a count of seconds since 1970");
    }
    if (allMatch(EPOCH_MS, texts) && within2000To2100(TimePattern.EPOCH_MILLISECONDS, texts)) {
      return only(
          TimePattern.EPOCH_MILLISECONDS, "every time is a count of milliseconds since 1970");
    }
    if (allMatch(SERIAL, texts) && within2000To2100(TimePattern.SERIAL_DAYS, texts)) {
      return only(
          TimePattern.SERIAL_DAYS,
          "every time is a number of days with a fraction, as spreadsheets count");
    }
    return Optional.empty();
  }

  private static Optional<TimeGuess> only(String pattern, String reason) {
    return Optional.of(new TimeGuess(List.of(pattern), reason, ""));
  }

  /** Patterns that read every text come first; where none does, one may miss a row in twenty. */
  private static TimeGuess lettered(List<String> texts) {
    List<String> candidates = candidates(texts);
    List<String> patterns = different(candidates, texts, texts.size());
    if (patterns.isEmpty() && texts.size() >= LEAST_FOR_FAULTS) {
      patterns = different(candidates, texts, texts.size() * 19 / 20);
    }
    if (patterns.size() != 1) {
      return new TimeGuess(patterns, "", example(texts, patterns));
    }
    return new TimeGuess(patterns, reason(patterns.get(0), texts), "");
  }

  private static List<String> different(List<String> candidates, List<String> texts, int least) {
    Map<List<Object>, String> byMeaning = new LinkedHashMap<>();
    for (String pattern : candidates) {
      TimePattern read = TimePattern.of(pattern);
      List<Object> meant = new ArrayList<>(texts.stream().map(read::read).toList());
      long good = meant.stream().filter(moment -> !moment.equals(Optional.empty())).count();
      if (good >= least) {
        byMeaning.putIfAbsent(meant, pattern);
      }
    }
    return List.copyOf(byMeaning.values());
  }

  /** Why there is no other way to read the dates. */
  private static String reason(String pattern, List<String> texts) {
    if (pattern.startsWith("d.M.")) {
      return "dates written with points begin with the day";
    }
    boolean may = pattern.startsWith("d") || pattern.startsWith("M");
    if (!may || pattern.contains("MMM")) {
      return "no other pattern reads every time";
    }
    String other =
        pattern.startsWith("d")
            ? pattern.replace('d', '#').replaceFirst("M+", "dd").replaceFirst("#+", "MM")
            : pattern.replaceFirst("M+", "#").replaceFirst("d+", "MM").replaceFirst("#", "dd");
    return texts.stream()
        .filter(text -> TimePattern.of(other).read(text).isEmpty())
        .findFirst()
        .map(text -> Words.quoted(text) + " can be read in this order only")
        .orElse("no other pattern reads every time");
  }

  /** A text that tells the patterns apart. */
  private static String example(List<String> texts, List<String> patterns) {
    if (patterns.isEmpty()) {
      return texts.get(0);
    }
    TimePattern one = TimePattern.of(patterns.get(0));
    TimePattern other = TimePattern.of(patterns.get(1));
    return texts.stream()
        .filter(text -> !one.read(text).equals(other.read(text)))
        .findFirst()
        .orElse(texts.get(0));
  }

  /** Patterns that read one of the first texts. */
  private static List<String> candidates(List<String> texts) {
    Set<String> patterns = new LinkedHashSet<>();
    List<String> first = texts.subList(0, Math.min(texts.size(), 3));
    for (String date : DATES) {
      add(date, first, patterns);
      for (String between : BETWEEN) {
        for (String time : TIMES) {
          add(date + between + time, first, patterns);
        }
      }
    }
    return List.copyOf(patterns);
  }

  private static void add(String pattern, List<String> texts, Set<String> patterns) {
    String plain = pattern.replace("''", "");
    boolean possible = texts.stream().anyMatch(text -> hasSignsOf(plain, text));
    if (possible && readsAny(TimePattern.of(plain), texts)) {
      patterns.add(plain);
    }
  }

  private static boolean readsAny(TimePattern pattern, List<String> texts) {
    return texts.stream().anyMatch(text -> pattern.read(text).isPresent());
  }

  /** Whether a text has the signs between the numbers; spares trying most patterns. */
  private static boolean hasSignsOf(String pattern, String text) {
    return pattern
        .chars()
        .filter(sign -> !Character.isLetter(sign) && sign != '\'')
        .allMatch(sign -> text.indexOf(sign) >= 0);
  }

  private static boolean reads(String pattern, List<String> texts) {
    TimePattern read = TimePattern.of(pattern);
    long good = texts.stream().filter(text -> read.read(text).isPresent()).count();
    return good == texts.size()
        || (texts.size() >= LEAST_FOR_FAULTS && good >= texts.size() * 19 / 20);
  }

  private static boolean allMatch(Pattern pattern, List<String> texts) {
    return texts.stream().allMatch(text -> pattern.matcher(text).matches());
  }

  private static boolean within2000To2100(String pattern, List<String> texts) {
    TimePattern read = TimePattern.of(pattern);
    return texts.stream()
        .map(read::read)
        .allMatch(moment -> moment.map(Moment::local).filter(TimeGuess::isOfOurTime).isPresent());
  }

  private static boolean isOfOurTime(LocalDateTime local) {
    return local.getYear() >= 2000 && local.getYear() < 2100;
  }
}
