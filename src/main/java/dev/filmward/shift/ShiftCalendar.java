package dev.filmward.shift;

import java.time.DayOfWeek;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Which shifts a plant works. A shift goes on until the next one begins, so every moment belongs to
 * one shift. Immutable.
 *
 * @param patterns 1 to 24; on one weekday no two of the same name or the same beginning
 * @param linesPerOperator how many lines one person looks after, by which alarm rates are judged
 */
public record ShiftCalendar(List<ShiftPattern> patterns, int linesPerOperator) {
  private static final int MOST = 24;
  private static final int MOST_LINES = 100;

  /** What holds until somebody sets another: three shifts of eight hours, two lines a person. */
  public static final ShiftCalendar USUAL =
      new ShiftCalendar(
          List.of(
              ShiftPattern.daily("Early", "06:00"),
              ShiftPattern.daily("Late", "14:00"),
              ShiftPattern.daily("Night", "22:00")),
          2);

  public ShiftCalendar {
    if (patterns.isEmpty() || patterns.size() > MOST) {
      throw new IllegalArgumentException(
          "a calendar has 1 to " + MOST + " shifts, not " + patterns.size());
    }
    if (linesPerOperator < 1 || linesPerOperator > MOST_LINES) {
      throw new IllegalArgumentException(
          "one person looks after 1 to " + MOST_LINES + " lines, not " + linesPerOperator);
    }
    patterns = List.copyOf(patterns);
    for (DayOfWeek day : DayOfWeek.values()) {
      check(day, on(patterns, day));
    }
  }

  /** Those that begin on a weekday, in the order of their beginning. */
  List<ShiftPattern> on(DayOfWeek day) {
    return on(patterns, day);
  }

  private static List<ShiftPattern> on(List<ShiftPattern> patterns, DayOfWeek day) {
    List<ShiftPattern> ofDay = new ArrayList<>(patterns);
    ofDay.removeIf(pattern -> !pattern.days().contains(day));
    ofDay.sort(Comparator.comparing(ShiftPattern::startsAt));
    return ofDay;
  }

  private static void check(DayOfWeek day, List<ShiftPattern> ofDay) {
    Set<Object> taken = new HashSet<>();
    for (ShiftPattern pattern : ofDay) {
      if (!taken.add(pattern.name()) || !taken.add(pattern.startsAt())) {
        throw new IllegalArgumentException(
            "on a "
                + day.getDisplayName(TextStyle.FULL, Locale.ENGLISH)
                + " there are two shifts named "
                + pattern.name()
                + " or two that begin at "
                + pattern.startsAt()
                + "; give each its own name and beginning");
      }
    }
  }
}
