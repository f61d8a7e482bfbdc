package dev.filmward.telling;

import java.util.Arrays;
import java.util.Locale;

/** What a message tells of. */
public enum Happening {
  /** An alarm opened, signals again, or became more urgent before anybody took it. */
  OPENED,
  /** Nobody took it in time. */
  ESCALATED,
  /** The samples are as usual again. */
  RETURNED,
  /** It is over, seen and explained. */
  CLOSED;

  /** As written in files and addresses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The one of that name; {@link IllegalArgumentException} where there is none. */
  public static Happening fromWord(String word) {
    return Arrays.stream(values())
        .filter(each -> each.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "told of is opened, escalated, returned or closed, not \"" + word + "\""));
  }
}
