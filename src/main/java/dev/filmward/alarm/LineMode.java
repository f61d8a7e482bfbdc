package dev.filmward.alarm;

import java.util.Arrays;
import java.util.Locale;

/** What a line is doing; while it does not run, its film is scrap by design and raises no alarm. */
public enum LineMode {
  RUNNING,
  STARTING,
  CHANGING_OVER,
  DOWN;

  /** As written in files and addresses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** In words that go on after the line's name and "is". */
  public String words() {
    return word().replace('-', ' ');
  }

  public boolean suppresses() {
    return this != RUNNING;
  }

  /** Whether it ends by itself after some samples. */
  public boolean passes() {
    return this == STARTING || this == CHANGING_OVER;
  }

  /** The mode of that name; {@link IllegalArgumentException} where there is none. */
  public static LineMode fromWord(String word) {
    return Arrays.stream(values())
        .filter(mode -> mode.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "a line is running, starting, changing-over or down, not \"" + word + "\""));
  }
}
