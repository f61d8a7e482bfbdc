package dev.filmward.telling;

import dev.filmward.alarm.Alarm;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/**
 * What one transaction did to an alarm. Goes by the words of states alone, so that an alarm that is
 * shelved, suppressed or out of service tells nobody anything.
 *
 * @param before as it was before the transaction; empty for a new one
 */
public record Change(Optional<Alarm> before, Alarm now) {
  private static final String UNACKNOWLEDGED = "unacknowledged";
  private static final Set<String> ACTIVE = Set.of(UNACKNOWLEDGED, "acknowledged");
  private static final Set<String> OVER = Set.of("returned-unacknowledged", "normal");

  /** What people may be told of it; nothing of an alarm that was old news when it came. */
  public Set<Happening> happenings() {
    Set<Happening> all = EnumSet.noneOf(Happening.class);
    if (now.historical()) {
      return all;
    }
    if (isOpened()) {
      all.add(Happening.OPENED);
    }
    if (ACTIVE.contains(stateBefore()) && OVER.contains(stateNow())) {
      all.add(Happening.RETURNED);
    }
    if (before.isPresent() && !before.get().isClosed() && now.isClosed()) {
      all.add(Happening.CLOSED);
    }
    return all;
  }

  /** Whether nobody has taken it and it goes on. */
  public static boolean isWaiting(Alarm alarm) {
    return !alarm.historical() && alarm.state().word().equals(UNACKNOWLEDGED);
  }

  /** Whether it comes back to the people after it was shelved, suppressed or out of service. */
  public boolean isBack() {
    return before.isPresent() && !ACTIVE.contains(stateBefore()) && !OVER.contains(stateBefore());
  }

  private boolean isOpened() {
    if (before.isEmpty()) {
      return stateNow().equals(UNACKNOWLEDGED) || stateNow().equals("returned-unacknowledged");
    }
    return stateNow().equals(UNACKNOWLEDGED)
        && (!stateBefore().equals(UNACKNOWLEDGED) || isMoreUrgent(before.get()));
  }

  private boolean isMoreUrgent(Alarm earlier) {
    return now.excursion().priority().compareTo(earlier.excursion().priority()) > 0;
  }

  private String stateBefore() {
    return before.map(alarm -> alarm.state().word()).orElse("");
  }

  private String stateNow() {
    return now.state().word();
  }
}
