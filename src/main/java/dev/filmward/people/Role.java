package dev.filmward.people;

import java.util.Arrays;
import java.util.Locale;

/** What a person does in the plant; each role may do what {@link Permission} says. */
public enum Role {
  VIEWER,
  SHIFT_LEAD,
  ENGINEER,
  QUALITY,
  ADMINISTRATOR;

  /** As written in files and addresses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The role of that name; {@link IllegalArgumentException} where there is none. */
  public static Role fromWord(String word) {
    return Arrays.stream(values())
        .filter(role -> role.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException("no role \"" + word + "\"; the roles are " + words()));
  }

  private static String words() {
    return String.join(", ", Arrays.stream(values()).map(Role::word).toList());
  }
}
