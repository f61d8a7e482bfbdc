package dev.filmward.store;

import dev.filmward.people.Permission;
import dev.filmward.people.PersonName;
import dev.filmward.people.Token;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/** What machines may do, by the hash of their token. Rows stay when a token has ended. */
public final class TokenTable {
  private final Handle handle;

  TokenTable(Handle handle) {
    this.handle = handle;
  }

  /** Adds a token, whose number is not looked at, and gives it with its number. */
  public Token add(Token token, String hash) {
    long id =
        handle
            .createUpdate(
                "INSERT INTO token (name, name_key, hash, scope, added_by, added_at, ends_at)"
                    + " VALUES (:name, :key, :hash, :scope, :by, :at, :ends)")
            .bind("name", token.name())
            .bind("key", PersonName.keyOf(token.name()))
            .bind("hash", hash)
            .bind("scope", words(token.scope()))
            .bind("by", token.addedBy())
            .bind("at", Times.toMicros(token.addedAt()))
            .bind("ends", Times.toMicros(token.endsAt()))
            .executeAndReturnGeneratedKeys("id")
            .mapTo(Long.class)
            .one();
    return find(id).orElseThrow();
  }

  /** Newest first. */
  public List<Token> all() {
    return handle
        .createQuery("SELECT * FROM token ORDER BY id DESC")
        .map((row, context) -> token(row))
        .list();
  }

  public Optional<Token> find(long id) {
    return handle
        .createQuery("SELECT * FROM token WHERE id = :id")
        .bind("id", id)
        .map((row, context) -> token(row))
        .findOne();
  }

  public Optional<Token> withHash(String hash) {
    return handle
        .createQuery("SELECT * FROM token WHERE hash = :hash")
        .bind("hash", hash)
        .map((row, context) -> token(row))
        .findOne();
  }

  /** Whether a token, also one that has ended, has a name. */
  public boolean isNamed(PersonName name) {
    return handle
            .createQuery("SELECT count(*) FROM token WHERE name_key = :key")
            .bind("key", name.key())
            .mapTo(Integer.class)
            .one()
        > 0;
  }

  public void revoke(long id, Instant at) {
    handle
        .createUpdate("UPDATE token SET revoked_at = :at WHERE id = :id AND revoked_at IS NULL")
        .bind("at", Times.toMicros(at))
        .bind("id", id)
        .execute();
  }

  private static Token token(ResultSet row) throws SQLException {
    long revoked = row.getLong("revoked_at");
    Optional<Instant> revokedAt =
        row.wasNull() ? Optional.empty() : Optional.of(Times.toInstant(revoked));
    return new Token(
        row.getLong("id"),
        row.getString("name"),
        permissions(row.getString("scope")),
        row.getString("added_by"),
        Times.toInstant(row.getLong("added_at")),
        Times.toInstant(row.getLong("ends_at")),
        revokedAt);
  }

  private static String words(Set<Permission> scope) {
    return scope.stream().map(Permission::word).sorted().collect(Collectors.joining(" "));
  }

  private static Set<Permission> permissions(String words) {
    return Arrays.stream(words.split(" ", -1))
        .map(Permission::fromWord)
        .collect(Collectors.toSet());
  }
}
