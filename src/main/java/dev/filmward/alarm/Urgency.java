package dev.filmward.alarm;

/** How much a sample's verdict on one characteristic weighs. */
record Urgency(Priority priority, boolean outOfSpec) {
  static final Urgency LEAST = new Urgency(Priority.LOW, false);

  Urgency and(Urgency other) {
    return new Urgency(
        priority.compareTo(other.priority) >= 0 ? priority : other.priority,
        outOfSpec || other.outOfSpec);
  }
}
