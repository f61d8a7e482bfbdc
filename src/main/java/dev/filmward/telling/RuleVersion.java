package dev.filmward.telling;

import java.util.Arrays;
import java.util.Locale;

/**
 * A rule as somebody decided it; the newest version of a rule holds.
 *
 * @param version from 1; 0 before it is kept
 */
public record RuleVersion(Rule rule, int version, State state, Decided decided) {

  /** Whether anybody is told by it. */
  public enum State {
    ON,
    OFF,
    REMOVED;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    /** The one of that name; {@link IllegalArgumentException} where there is none. */
    public static State fromWord(String word) {
      return Arrays.stream(values())
          .filter(each -> each.word().equals(word))
          .findFirst()
          .orElseThrow(
              () ->
                  new IllegalArgumentException(
                      "a rule is on, off or removed, not \"" + word + "\""));
    }
  }

  public boolean isOn() {
    return state == State.ON;
  }
}
