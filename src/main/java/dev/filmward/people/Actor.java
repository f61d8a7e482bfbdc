package dev.filmward.people;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Who asks for something, and what that person or machine may do. Immutable.
 *
 * @param name as it is kept with what is done; empty for somebody who is not known
 */
public record Actor(String name, Set<Permission> permissions) {
  private static final Actor NOBODY = new Actor("", Set.of(Permission.ANYBODY));

  public Actor {
    permissions = Set.copyOf(permissions);
  }

  /** Somebody who is not signed in. */
  public static Actor nobody() {
    return NOBODY;
  }

  public static Actor of(String name, Role role) {
    return new Actor(
        name,
        Arrays.stream(Permission.values())
            .filter(permission -> permission.isGivenTo(role))
            .collect(Collectors.toSet()));
  }

  /** Somebody who is known and may do no more than somebody who is not. */
  public static Actor limited(String name) {
    return new Actor(name, NOBODY.permissions);
  }

  public Actor and(Permission more) {
    Set<Permission> all = EnumSet.copyOf(permissions);
    all.add(more);
    return new Actor(name, all);
  }

  public boolean isKnown() {
    return !name.isEmpty();
  }

  public boolean may(Permission permission) {
    return permissions.contains(permission);
  }
}
