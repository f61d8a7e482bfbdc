package dev.filmward.alarm;

import java.util.Locale;

/**
 * Where an alarm stands between the process and the people: does its excursion go on, and has a
 * person taken it on?
 *
 * <p>States and transitions after IEC 62682 / ISA-18.2, without latching: an alarm that signals
 * again within the same excursion after it was acknowledged stays acknowledged.
 */
public enum AlarmState {
  UNACKNOWLEDGED,
  ACKNOWLEDGED,
  RETURNED_UNACKNOWLEDGED,
  NORMAL;

  /** As written in files and addresses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The excursion signals (again). */
  public AlarmState onSignal() {
    return isAcknowledged() ? ACKNOWLEDGED : UNACKNOWLEDGED;
  }

  /** A valid sample came that does not signal. */
  public AlarmState onReturn() {
    return isAcknowledged() ? NORMAL : RETURNED_UNACKNOWLEDGED;
  }

  /**
   * A person says "seen, mine".
   *
   * @throws IllegalStateException if somebody did so before
   */
  public AlarmState onAcknowledge() {
    return switch (this) {
      case UNACKNOWLEDGED -> ACKNOWLEDGED;
      case RETURNED_UNACKNOWLEDGED -> NORMAL;
      case ACKNOWLEDGED, NORMAL ->
          throw new IllegalStateException("an alarm is acknowledged once; this one is " + word());
    };
  }

  public boolean isAcknowledged() {
    return this == ACKNOWLEDGED || this == NORMAL;
  }

  /** Whether the excursion is going on. */
  public boolean isActive() {
    return this == UNACKNOWLEDGED || this == ACKNOWLEDGED;
  }
}
