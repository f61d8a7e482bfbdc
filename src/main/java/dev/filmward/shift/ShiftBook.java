package dev.filmward.shift;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Takes the calendars of a plant and a moment, gives the shift. Immutable.
 *
 * <p>Shifts begin by the plant's clock. On a day on which clocks change, the shift across the
 * change is an hour shorter or longer. A beginning that clocks skip is moved on by as much as they
 * skip; of one that comes twice the earlier one counts. A shift without any length, because two
 * beginnings fell together, is left out.
 */
public final class ShiftBook {
  /** A calendar has a shift at least once a week, so this many days hold a beginning. */
  private static final int DAYS_AROUND = 8;

  private final List<CalendarVersion> versions;
  private final ZoneId zone;

  /**
   * @param versions first to last; none means {@link ShiftCalendar#USUAL}
   */
  public ShiftBook(List<CalendarVersion> versions, ZoneId zone) {
    this.versions = List.copyOf(versions);
    this.zone = zone;
  }

  public List<CalendarVersion> versions() {
    return versions;
  }

  /** The calendar that gives a day's shifts: the latest version that holds from then or before. */
  public ShiftCalendar on(LocalDate day) {
    return versionOn(day).map(CalendarVersion::calendar).orElse(ShiftCalendar.USUAL);
  }

  /** The plant's date at a moment. */
  public LocalDate date(Instant moment) {
    return moment.atZone(zone).toLocalDate();
  }

  public Shift at(Instant moment) {
    return within(moment, moment.plusMillis(1)).get(0);
  }

  public Shift before(Shift shift) {
    return at(shift.from().minusMillis(1));
  }

  public Shift after(Shift shift) {
    return at(shift.to());
  }

  /** Shifts of which some part lies in a span, the end left out; in the order of time. */
  public List<Shift> within(Instant from, Instant to) {
    List<Shift> shifts = shifts(date(from).minusDays(DAYS_AROUND), date(to).plusDays(DAYS_AROUND));
    return shifts.stream()
        .filter(shift -> shift.from().isBefore(to) && shift.to().isAfter(from))
        .toList();
  }

  /**
   * The shift that an address names, as {@link Shift#word} writes it.
   *
   * @throws IllegalArgumentException if it is no such word
   */
  public Optional<Shift> find(String word) {
    int day = "2026-11-25".length();
    if (word.length() < day + 2 || word.charAt(day) != ' ') {
      throw new IllegalArgumentException(
          "a shift is written as 2026-11-25 Early, not \"" + word + "\"");
    }
    try {
      LocalDate date = LocalDate.parse(word.substring(0, day));
      return shifts(date, date.plusDays(DAYS_AROUND)).stream()
          .filter(shift -> shift.word().equals(word))
          .findFirst();
    } catch (DateTimeParseException e) {
      throw new IllegalArgumentException(
          "the day of a shift is written as 2026-11-25, not \"" + word.substring(0, day) + "\"", e);
    }
  }

  private record Beginning(LocalDate day, ShiftPattern pattern, Instant at) {}

  private List<Shift> shifts(LocalDate first, LocalDate last) {
    List<Beginning> beginnings = new ArrayList<>();
    for (LocalDate day = first; !day.isAfter(last); day = day.plusDays(1)) {
      for (ShiftPattern pattern : on(day).on(day.getDayOfWeek())) {
        Instant at = day.atTime(pattern.startsAt()).atZone(zone).toInstant();
        beginnings.add(new Beginning(day, pattern, at));
      }
    }
    beginnings.sort(Comparator.comparing(Beginning::at));
    List<Shift> shifts = new ArrayList<>();
    for (int i = 1; i < beginnings.size(); i++) {
      Beginning one = beginnings.get(i - 1);
      if (one.at().isBefore(beginnings.get(i).at())) {
        shifts.add(shift(one, beginnings.get(i).at()));
      }
    }
    return shifts;
  }

  private Shift shift(Beginning one, Instant to) {
    LocalDate first = versionOn(one.day()).map(CalendarVersion::holdsFrom).orElse(one.day());
    return new Shift(
        one.day(), one.pattern().name(), one.at(), to, one.pattern().crewOn(one.day(), first));
  }

  private Optional<CalendarVersion> versionOn(LocalDate day) {
    for (int i = versions.size() - 1; i >= 0; i--) {
      if (!versions.get(i).holdsFrom().isAfter(day)) {
        return Optional.of(versions.get(i));
      }
    }
    return Optional.empty();
  }
}
