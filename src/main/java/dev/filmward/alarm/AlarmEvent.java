package dev.filmward.alarm;

/** What can happen to an alarm: by the process, by a person, or by the plant's own rules. */
public enum AlarmEvent {
  /** Its excursion signals, and nobody has taken it on. */
  SIGNAL("signals"),
  /** Its excursion signals again after somebody took it on. */
  SIGNAL_AGAIN("signals again"),
  /** Its excursion returns to normal. */
  RETURN("returns to normal"),
  /** A person says "seen, mine". */
  ACKNOWLEDGE("acknowledged"),
  /** A person puts it aside until a stated time. */
  SHELVE("shelved"),
  /** A person takes what it watches out of service. */
  TAKE_OUT("taken out of service"),
  /** The line is down, starting or changing over. */
  SUPPRESS("suppressed"),
  /** Nothing holds it back any more, and its excursion goes on. */
  FREE_ACTIVE("let go while it goes on"),
  /** Nothing holds it back any more, and its excursion is not going on. */
  FREE_QUIET("let go when it is over");

  private final String words;

  AlarmEvent(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }
}
