package dev.filmward.store;

import java.util.Collection;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Knows which write changed a table last. Writes are counted one after another, by whoever may
 * write; everybody may ask.
 */
final class Changes {
  private final Map<String, Long> lastWrite = new ConcurrentHashMap<>();
  private volatile long writes;

  /** A moment: what is read from now on holds all writes so far. */
  long now() {
    return writes;
  }

  /** Notes a write after it is kept, and before anybody is told so. */
  void wrote(Collection<String> tables) {
    long number = writes + 1;
    tables.forEach(table -> lastWrite.put(table, number));
    writes = number;
  }

  /** Whether none of the tables was changed since a moment. */
  boolean isUnchanged(Set<String> tables, long since) {
    return tables.stream().allMatch(table -> lastWrite.getOrDefault(table, 0L) <= since);
  }
}
