package dev.filmward.people;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;

/**
 * What a machine, such as a gauge, may do until a day. Its secret is shown once and not kept.
 *
 * @param scope some of {@link #SCOPES}
 * @param revokedAt where somebody ended it before
 */
public record Token(
    long id,
    String name,
    Set<Permission> scope,
    String addedBy,
    Instant addedAt,
    Instant endsAt,
    Optional<Instant> revokedAt) {

  /** What machines may be given; deciding is for people. */
  public static final Set<Permission> SCOPES =
      Set.of(Permission.READ, Permission.SEND_FILES, Permission.TELL_LINE_STATE);

  public Token {
    scope = Set.copyOf(scope);
    if (scope.isEmpty() || !SCOPES.containsAll(scope)) {
      throw new IllegalArgumentException(
          "a token is for at least one of read, send-files and tell-line-state");
    }
  }

  public boolean holdsAt(Instant now) {
    return revokedAt.isEmpty() && now.isBefore(endsAt);
  }

  public Actor actor() {
    return new Actor(name, scope).and(Permission.ANYBODY);
  }
}
