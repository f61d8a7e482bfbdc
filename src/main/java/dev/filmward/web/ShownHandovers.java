package dev.filmward.web;

import dev.filmward.store.SignedHandover;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The last handovers that pages were given, so that a person signs exactly what that person saw and
 * not what has become of it since. Thread-safe; forgets the oldest.
 */
final class ShownHandovers {
  private static final int MOST = 256;

  private final Map<String, String> contents =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, String> eldest) {
          return size() > MOST;
        }
      };

  /** Remembers a content and gives its digest. */
  synchronized String show(String content) {
    String digest = SignedHandover.digest(content);
    contents.put(digest, content);
    return digest;
  }

  synchronized Optional<String> find(String digest) {
    return Optional.ofNullable(contents.get(digest));
  }
}
