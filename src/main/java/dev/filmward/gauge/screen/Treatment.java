package dev.filmward.gauge.screen;

import java.util.Arrays;
import java.util.Locale;

/** What is done about a kind of misreading. */
public enum Treatment {
  /** A sample that is certainly misread, so that its means are spoilt, is not charted. */
  HOLD_OUT,
  /** It is shown, and charted all the same. */
  MARK,
  /** It is not looked for. */
  OFF;

  /** As written in files and addresses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * The treatment that is written so.
   *
   * @throws IllegalArgumentException if there is none
   */
  public static Treatment fromWord(String word) {
    return Arrays.stream(values())
        .filter(each -> each.word().equals(word))
        .findFirst()
        .orElseThrow(
            () -> new IllegalArgumentException("\"" + word + "\" is not hold-out, mark or off"));
  }
}
