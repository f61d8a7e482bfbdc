package dev.filmward.web;

import java.util.concurrent.atomic.LongAdder;

/** Counts what event streams did since the start. Thread-safe. */
final class StreamTally {
  private final LongAdder delivered = new LongAdder();
  private final LongAdder dropped = new LongAdder();

  void eventsDelivered(int events) {
    delivered.add(events);
  }

  void pageDropped() {
    dropped.increment();
  }

  /** Events that were written to a page, once for each page. */
  long delivered() {
    return delivered.sum();
  }

  /** Pages that were cut off since they took their events too slowly. */
  long dropped() {
    return dropped.sum();
  }
}
