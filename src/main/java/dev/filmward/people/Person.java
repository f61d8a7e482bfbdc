package dev.filmward.people;

import java.time.Instant;
import java.util.Arrays;
import java.util.Locale;

/** Somebody who has an account; known in all that is kept by the name. */
public record Person(
    long id, String name, Role role, Standing standing, SecondFactor factor, Instant addedAt) {

  /** Whether a person may come in, and with which password. */
  public enum Standing {
    ACTIVE,
    /** Has a password that somebody else made, which must be changed before anything else. */
    ONE_TIME,
    DISABLED;

    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Standing fromWord(String word) {
      return Arrays.stream(values())
          .filter(standing -> standing.word().equals(word))
          .findFirst()
          .orElseThrow(() -> new IllegalArgumentException("no standing \"" + word + "\""));
    }
  }

  /** Whether a code is asked for besides the password. */
  public enum SecondFactor {
    NONE,
    /** Its key was shown, and no code of it came yet: it asks for nothing. */
    OFFERED,
    ON;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    public static SecondFactor fromWord(String word) {
      return Arrays.stream(values())
          .filter(factor -> factor.word().equals(word))
          .findFirst()
          .orElseThrow(() -> new IllegalArgumentException("no second factor \"" + word + "\""));
    }
  }

  public boolean hasSecondFactor() {
    return factor == SecondFactor.ON;
  }

  public boolean isDisabled() {
    return standing == Standing.DISABLED;
  }

  public boolean mustChangePassword() {
    return standing == Standing.ONE_TIME;
  }

  /** What the person may do now; with a one-time password only what anybody may. */
  public Actor actor() {
    return standing == Standing.ACTIVE ? Actor.of(name, role) : Actor.limited(name);
  }
}
