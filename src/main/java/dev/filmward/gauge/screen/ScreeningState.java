package dev.filmward.gauge.screen;

import java.util.Arrays;
import java.util.Locale;

/** How a sample stands that has flags, or about whose readings a person decided. */
public enum ScreeningState {
  /** By rule: not charted. */
  HELD_OUT,
  /** By rule: charted, with its flags beside it. */
  MARKED,
  /** A person said that the film is so: charted. */
  PUT_BACK,
  /** A person said that it was misread: not charted. */
  CONFIRMED,
  /** A person left it out though no rule did: not charted. */
  LEFT_OUT;

  public boolean isOutOfCharts() {
    return this == HELD_OUT || this == CONFIRMED || this == LEFT_OUT;
  }

  /** Whether a person decided so, which no rule changes. */
  public boolean isDecided() {
    return this == PUT_BACK || this == CONFIRMED || this == LEFT_OUT;
  }

  /** How it counts for the samples after it. */
  public RecentSamples.Standing standing() {
    return switch (this) {
      case HELD_OUT, MARKED -> RecentSamples.Standing.BY_RULE;
      case PUT_BACK -> RecentSamples.Standing.PUT_BACK;
      case CONFIRMED, LEFT_OUT -> RecentSamples.Standing.LEFT_OUT;
    };
  }

  /** As written in files and addresses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * The state that is written so.
   *
   * @throws IllegalArgumentException if there is none
   */
  public static ScreeningState fromWord(String word) {
    return Arrays.stream(values())
        .filter(each -> each.word().equals(word))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no state \"" + word + "\""));
  }
}
