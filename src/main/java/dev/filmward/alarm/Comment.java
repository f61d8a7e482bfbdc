package dev.filmward.alarm;

import java.time.Instant;

/** What somebody wrote about an alarm. */
public record Comment(String words, String by, Instant at) {
  public Comment {
    if (by.isBlank()) {
      throw new IllegalArgumentException("who writes this? Give a name");
    }
    if (words.isBlank()) {
      throw new IllegalArgumentException("a comment has words");
    }
  }
}
