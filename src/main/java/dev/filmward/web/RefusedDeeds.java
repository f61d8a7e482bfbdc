package dev.filmward.web;

import dev.filmward.people.Permission;
import java.util.LinkedHashMap;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells the log who was refused what for want of a permission: the first time, then each time that
 * the number has doubled, so that nobody can fill the log. Of the newest {@value #MOST_KEPT} pairs
 * of somebody and a permission; names are not told. Thread-safe.
 */
final class RefusedDeeds {
  private static final Logger LOG = LoggerFactory.getLogger(RefusedDeeds.class);
  private static final int MOST_KEPT = 1_000;

  private final Map<Key, Integer> counts = new LinkedHashMap<>(16, 0.75f, true);

  private record Key(String who, Permission permission) {}

  /** Counts a refusal; gives how many there were, where it was told. */
  synchronized int note(String who, Permission permission) {
    int count = counts.merge(new Key(who, permission), 1, Integer::sum);
    if (counts.size() > MOST_KEPT) {
      counts.remove(counts.keySet().iterator().next());
    }
    if (Integer.bitCount(count) != 1) {
      return 0;
    }
    LOG.warn("{} was refused what needs {}: {} times so far", who, permission.word(), count);
    return count;
  }
}
