package dev.filmward.shift;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * One shift of a calendar: its name, when it begins by the plant's clock and on which weekdays, and
 * the crews that take it in turn. Immutable.
 *
 * @param startsAt to the minute
 * @param days weekdays on which it begins; at least one
 * @param crews one a day, again from the first after the last; empty where crews are not told apart
 */
public record ShiftPattern(
    String name, LocalTime startsAt, Set<DayOfWeek> days, List<String> crews) {
  private static final int LONGEST_NAME = 40;
  private static final int LONGEST_ROTATION = 366;

  public ShiftPattern {
    name = name.strip();
    if (name.isEmpty() || name.length() > LONGEST_NAME) {
      throw new IllegalArgumentException(
          "a shift has a name of 1 to " + LONGEST_NAME + " characters, not \"" + name + "\"");
    }
    if (!startsAt.equals(startsAt.truncatedTo(ChronoUnit.MINUTES))) {
      throw new IllegalArgumentException(name + " begins at a full minute, not at " + startsAt);
    }
    if (days.isEmpty()) {
      throw new IllegalArgumentException(name + " begins on no day; name at least one weekday");
    }
    days = Set.copyOf(days);
    crews = crews.stream().map(String::strip).toList();
    if (crews.size() > LONGEST_ROTATION || crews.stream().anyMatch(String::isEmpty)) {
      throw new IllegalArgumentException(
          "crews of " + name + " are at most " + LONGEST_ROTATION + " names, none of them blank");
    }
  }

  /** A shift that begins every day, its crews not told apart. */
  public static ShiftPattern daily(String name, String startsAt) {
    return new ShiftPattern(name, LocalTime.parse(startsAt), Set.of(DayOfWeek.values()), List.of());
  }

  /**
   * Who has it on a day.
   *
   * @param first the day of the first crew in the rotation
   */
  Optional<String> crewOn(LocalDate day, LocalDate first) {
    if (crews.isEmpty()) {
      return Optional.empty();
    }
    long turn = Math.floorMod(ChronoUnit.DAYS.between(first, day), (long) crews.size());
    return Optional.of(crews.get((int) turn));
  }
}
