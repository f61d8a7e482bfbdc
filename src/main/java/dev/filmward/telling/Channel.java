package dev.filmward.telling;

import java.util.Arrays;
import java.util.Locale;

/** The way a message goes. */
public enum Channel {
  EMAIL,
  WEBHOOK;

  /** As written in files and addresses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The one of that name; {@link IllegalArgumentException} where there is none. */
  public static Channel fromWord(String word) {
    return Arrays.stream(values())
        .filter(each -> each.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "a message goes by email or webhook, not by \"" + word + "\""));
  }
}
