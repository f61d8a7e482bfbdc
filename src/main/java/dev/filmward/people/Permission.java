package dev.filmward.people;

import static dev.filmward.people.Role.ADMINISTRATOR;
import static dev.filmward.people.Role.ENGINEER;
import static dev.filmward.people.Role.QUALITY;
import static dev.filmward.people.Role.SHIFT_LEAD;
import static dev.filmward.people.Role.VIEWER;

import java.util.Arrays;
import java.util.Locale;
import java.util.Set;

/** What may be done, and by which roles. Every route needs exactly one of these. */
public enum Permission {
  /** Pages, signing in, and what says only that the server is there. */
  ANYBODY(Set.of(Role.values())),
  /** Look at lines, charts, alarms, files and settings. */
  READ(VIEWER, SHIFT_LEAD, ENGINEER, QUALITY, ADMINISTRATOR),
  /** Take alarms, say what was found, shelve for a while, sign a shift. */
  TEND_ALARMS(SHIFT_LEAD, ENGINEER, QUALITY, ADMINISTRATOR),
  /** Say what a line is doing; apart from the rest, because a line's own controls may say it. */
  TELL_LINE_STATE(SHIFT_LEAD, ENGINEER, QUALITY, ADMINISTRATOR),
  /** Bring files, and mend rows of them. */
  SEND_FILES(SHIFT_LEAD, ENGINEER, QUALITY, ADMINISTRATOR),
  /** Decide about limits, tests, mappings, structures, causes and checks; take out of service. */
  DECIDE(ENGINEER, QUALITY, ADMINISTRATOR),
  /** Say what becomes of rolls. */
  DISPOSE(QUALITY, ADMINISTRATOR),
  /** Take the audit chain out for an auditor. */
  AUDIT(QUALITY, ADMINISTRATOR),
  /** Accounts, tokens, who is told of what, the plant's settings. */
  ADMINISTER(ADMINISTRATOR);

  @SuppressWarnings("ImmutableEnumChecker") // Set.of is never changed
  private final Set<Role> roles;

  Permission(Role... roles) {
    this(Set.of(roles));
  }

  Permission(Set<Role> roles) {
    this.roles = roles;
  }

  public boolean isGivenTo(Role role) {
    return roles.contains(role);
  }

  /** As written in addresses and files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The permission of that name; {@link IllegalArgumentException} where there is none. */
  public static Permission fromWord(String word) {
    return Arrays.stream(values())
        .filter(permission -> permission.word().equals(word))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no permission \"" + word + "\""));
  }
}
