package dev.filmward.alarm;

import java.util.Locale;

/** How soon an alarm needs its person; the later constant is the more urgent one. */
public enum Priority {
  LOW,
  MEDIUM,
  HIGH;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
