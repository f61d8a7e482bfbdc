package dev.filmward.telling;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.zone.ZoneOffsetTransition;
import java.util.Optional;

/**
 * Hours of each day in which a person is left alone, by the clock of the plant; past midnight where
 * they end before they begin.
 *
 * <p>Each night is one span: where the clock is put back, it begins at the first and ends at the
 * second of the two moments with that time; a time that the clock jumps over is the moment of the
 * jump.
 */
public record QuietHours(LocalTime from, LocalTime to) {

  public QuietHours {
    if (from.equals(to)) {
      throw new IllegalArgumentException("quiet hours begin and end at different times");
    }
  }

  /** When the quiet ends that a moment lies in; empty where it lies in none. */
  public Optional<Instant> endAfter(Instant moment, ZoneId zone) {
    LocalDate today = moment.atZone(zone).toLocalDate();
    for (LocalDate night : new LocalDate[] {today.minusDays(1), today}) {
      Instant end = end(night, zone);
      if (!moment.isBefore(begin(night, zone)) && moment.isBefore(end)) {
        return Optional.of(end);
      }
    }
    return Optional.empty();
  }

  private Instant begin(LocalDate night, ZoneId zone) {
    LocalDateTime begin = night.atTime(from);
    return jumpOver(begin, zone)
        .orElseGet(() -> begin.atZone(zone).withEarlierOffsetAtOverlap().toInstant());
  }

  private Instant end(LocalDate night, ZoneId zone) {
    LocalDateTime end = (to.isAfter(from) ? night : night.plusDays(1)).atTime(to);
    return jumpOver(end, zone)
        .orElseGet(() -> end.atZone(zone).withLaterOffsetAtOverlap().toInstant());
  }

  private static Optional<Instant> jumpOver(LocalDateTime time, ZoneId zone) {
    return Optional.ofNullable(zone.getRules().getTransition(time))
        .filter(ZoneOffsetTransition::isGap)
        .map(ZoneOffsetTransition::getInstant);
  }
}
