package dev.filmward.alarm;

import java.util.Arrays;
import java.util.Locale;

/** What becomes of a roll. */
public enum RollState {
  /** It waits for a decision. */
  HELD("held"),
  RELEASED("released"),
  SCRAPPED("scrapped"),
  REWORK("put down for rework");

  private final String words;

  RollState(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** As written in addresses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The state of that word; {@link IllegalArgumentException} where there is none. */
  public static RollState fromWord(String word) {
    return Arrays.stream(values())
        .filter(state -> state.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "a roll is held, released, scrapped or rework, not \"" + word + "\""));
  }
}
