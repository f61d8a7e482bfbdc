package dev.filmward.access;

import dev.filmward.people.Secret;
import dev.filmward.store.Watched;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

/**
 * Remembers what the database said of secrets that were shown, by their hashes, until anything is
 * written to a table that it was read from; so nothing that is taken away is remembered when the
 * taking has returned. What was not found is not remembered. Thread-safe.
 */
final class Remembered<T> {
  private static final int MOST = 10_000;

  private final Map<String, Watched<Optional<T>>> known = new ConcurrentHashMap<>();
  private final Function<String, Watched<Optional<T>>> asked;

  /**
   * @param asked asks the database about a hash
   */
  Remembered(Function<String, Watched<Optional<T>>> asked) {
    this.asked = asked;
  }

  Optional<T> of(Secret secret) {
    String hash = secret.hash();
    Watched<Optional<T>> before = known.get(hash);
    if (before != null && before.isCurrent()) {
      return before.value();
    }
    Watched<Optional<T>> now = asked.apply(hash);
    if (now.value().isEmpty()) {
      known.remove(hash);
    } else {
      keep(hash, now);
    }
    return now.value();
  }

  private void keep(String hash, Watched<Optional<T>> now) {
    if (known.size() >= MOST) {
      known.clear();
    }
    known.put(hash, now);
  }
}
