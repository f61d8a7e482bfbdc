package dev.filmward.intake;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

/**
 * Reads points in time as a mapping says that they are written. A local time that does not occur,
 * where clocks are put forward, is refused. One owner, one thread.
 */
final class MappedTimes {
  private final TimeForm form;
  private final TimePattern pattern;
  private final ZoneId zone;
  private Instant instant = Instant.MIN;
  private String reason = "";
  private boolean sawLocal;
  private boolean sawTwice;

  MappedTimes(TimeForm form, ZoneId plantZone) {
    this.form = form;
    this.pattern = TimePattern.of(form.pattern());
    this.zone = form.zone().orElse(plantZone);
  }

  /** True if {@link #instant} is what the text says, else {@link #reason} says why not. */
  boolean read(String text) {
    Optional<TimePattern.Moment> moment = pattern.read(text);
    if (moment.isEmpty()) {
      reason = Words.quoted(text) + " is not a date and time of the pattern " + form.pattern();
      return false;
    }
    ZoneOffset offset = moment.get().offset();
    return offset == null
        ? atPlace(moment.get().local())
        : at(moment.get().local().toInstant(offset));
  }

  Instant instant() {
    return instant;
  }

  String reason() {
    return reason;
  }

  /** What a person should know of how times were read. */
  void note(List<String> notes) {
    if (sawLocal) {
      notes.add("times without an offset were read as local times of " + zone);
    }
    if (sawTwice) {
      notes.add(
          "some local times occur twice, where clocks were put back; " + form.twice().words());
    }
  }

  private boolean at(Instant time) {
    instant = time;
    return true;
  }

  private boolean atPlace(LocalDateTime local) {
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    if (offsets.isEmpty()) {
      reason = Reasons.notOnTheClock(local, zone);
      return false;
    }
    sawLocal = true;
    sawTwice |= offsets.size() > 1;
    Instant earlier = local.toInstant(offsets.get(0));
    return offsets.size() == 1 ? at(earlier) : either(earlier, local.toInstant(offsets.get(1)));
  }

  private boolean either(Instant earlier, Instant later) {
    if (form.twice() == Twice.REFUSE) {
      reason =
          "this local time occurs twice in "
              + zone
              + ", where clocks were put back; write it"
              + " with its offset";
      return false;
    }
    boolean takeLater =
        form.twice() == Twice.LATER
            || (form.twice() == Twice.ORDER
                && earlier.isBefore(instant)
                && !later.isBefore(instant));
    return at(takeLater ? later : earlier);
  }
}
