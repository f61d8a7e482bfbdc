package dev.filmward.access;

import dev.filmward.access.AccessAudit.Deed;
import dev.filmward.people.Permission;
import dev.filmward.people.PersonName;
import dev.filmward.people.Secret;
import dev.filmward.people.Token;
import dev.filmward.store.Store;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Set;

/** Tokens of machines: made, found by what a machine shows, revoked. Thread-safe. */
public final class TokenDesk {
  private static final Duration LONGEST = Duration.ofDays(2 * 366);

  private final Store store;
  private final Clock clock;
  private final Remembered<Token> remembered;

  public TokenDesk(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
    this.remembered =
        new Remembered<>(hash -> store.watch(tables -> tables.tokens().withHash(hash)));
  }

  /** A token with its secret, which is told once and not kept. */
  public record Made(Token token, Secret secret) {}

  public List<Token> all() {
    return store.read(tables -> tables.tokens().all());
  }

  /**
   * Makes a token.
   *
   * @throws IllegalArgumentException if it would end before now or in more than two years
   * @throws IllegalStateException if somebody, or another token, has that name
   */
  public Made add(PersonName name, Set<Permission> scope, Instant endsAt, String by) {
    Instant now = clock.instant();
    if (!endsAt.isAfter(now) || endsAt.isAfter(now.plus(LONGEST))) {
      throw new IllegalArgumentException("a token ends some day from now on, within two years");
    }
    Secret secret = Secret.random();
    Token wanted = new Token(0, name.text(), scope, by, now, endsAt, Optional.empty());
    return store.write(
        tables -> {
          if (tables.people().named(name.text()).isPresent() || tables.tokens().isNamed(name)) {
            throw new IllegalStateException("there is a \"" + name.text() + "\" already");
          }
          Token token = tables.tokens().add(wanted, secret.hash());
          tables.audit().add(AccessAudit.tokenAdded(token));
          return new Made(token, secret);
        });
  }

  /**
   * Ends a token at once.
   *
   * @throws NoSuchElementException if there is no such token
   */
  public void revoke(long id, String by) {
    Deed deed = new Deed(by, clock.instant());
    store.change(
        tables -> {
          Token token =
              tables
                  .tokens()
                  .find(id)
                  .orElseThrow(() -> new NoSuchElementException("no token " + id));
          if (token.revokedAt().isEmpty()) {
            tables.tokens().revoke(id, deed.at());
            tables.audit().add(AccessAudit.tokenRevoked(deed, token));
          }
        });
  }

  /** The token that a machine shows, while it holds. */
  public Optional<Token> shown(Secret secret) {
    Instant now = clock.instant();
    return remembered.of(secret).filter(token -> token.holdsAt(now));
  }
}
