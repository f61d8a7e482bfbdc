package dev.filmward.store;

import dev.filmward.people.Person;
import dev.filmward.people.Person.Standing;
import dev.filmward.people.PersonName;
import dev.filmward.people.Role;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;

/**
 * People who have an account. They are never deleted, because their names stand in what is kept.
 */
public final class PersonTable {
  private final Handle handle;

  PersonTable(Handle handle) {
    this.handle = handle;
  }

  /**
   * What somebody signs in with.
   *
   * @param hash of the password
   * @param oneTimeUntil until when a password that somebody else made can be used
   */
  public record Credential(String hash, Optional<Instant> oneTimeUntil) {}

  /** A person with what that person signs in with. */
  public record Account(Person person, Credential credential) {}

  public Person add(PersonName name, Role role, Credential credential, Instant at) {
    long id =
        handle
            .createUpdate(
                "INSERT INTO person (name, name_key, role, standing, password, one_time_until,"
                    + " added_at) VALUES (:name, :key, :role, :standing, :password, :until, :at)")
            .bind("name", name.text())
            .bind("key", name.key())
            .bind("role", role.word())
            .bind("standing", standingWith(credential).word())
            .bind("password", credential.hash())
            .bind("until", credential.oneTimeUntil().map(Times::toMicros).orElse(null))
            .bind("at", Times.toMicros(at))
            .executeAndReturnGeneratedKeys("id")
            .mapTo(Long.class)
            .one();
    return find(id).orElseThrow();
  }

  /** By name. */
  public List<Person> all() {
    return handle
        .createQuery("SELECT * FROM person ORDER BY name_key")
        .map((row, context) -> person(row))
        .list();
  }

  public Optional<Person> find(long id) {
    return account(id).map(Account::person);
  }

  public Optional<Account> account(long id) {
    return one(handle.createQuery("SELECT * FROM person WHERE id = :id").bind("id", id));
  }

  /** By a name as somebody typed it. */
  public Optional<Account> named(String typed) {
    return one(
        handle
            .createQuery("SELECT * FROM person WHERE name_key = :key")
            .bind("key", PersonName.keyOf(typed)));
  }

  public void give(long id, Role role) {
    handle
        .createUpdate("UPDATE person SET role = :role WHERE id = :id")
        .bind("role", role.word())
        .bind("id", id)
        .execute();
  }

  public void disable(long id) {
    handle
        .createUpdate("UPDATE person SET standing = :standing WHERE id = :id")
        .bind("standing", Standing.DISABLED.word())
        .bind("id", id)
        .execute();
  }

  /** Sets a password; a disabled person may come in again with it. */
  public void credential(long id, Credential credential) {
    handle
        .createUpdate(
            "UPDATE person SET standing = :standing, password = :password, one_time_until = :until"
                + " WHERE id = :id")
        .bind("standing", standingWith(credential).word())
        .bind("password", credential.hash())
        .bind("until", credential.oneTimeUntil().map(Times::toMicros).orElse(null))
        .bind("id", id)
        .execute();
  }

  private static Standing standingWith(Credential credential) {
    return credential.oneTimeUntil().isPresent() ? Standing.ONE_TIME : Standing.ACTIVE;
  }

  private static Optional<Account> one(Query query) {
    return query.map((row, context) -> account(row)).findOne();
  }

  private static Account account(ResultSet row) throws SQLException {
    long until = row.getLong("one_time_until");
    Optional<Instant> oneTimeUntil =
        row.wasNull() ? Optional.empty() : Optional.of(Times.toInstant(until));
    return new Account(person(row), new Credential(row.getString("password"), oneTimeUntil));
  }

  private static Person person(ResultSet row) throws SQLException {
    return new Person(
        row.getLong("id"),
        row.getString("name"),
        Role.fromWord(row.getString("role")),
        Standing.fromWord(row.getString("standing")),
        Times.toInstant(row.getLong("added_at")));
  }
}
