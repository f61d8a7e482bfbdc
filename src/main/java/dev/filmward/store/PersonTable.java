package dev.filmward.store;

import dev.filmward.people.Person;
import dev.filmward.people.Person.SecondFactor;
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

  /**
   * What codes are worked out of.
   *
   * @param hex the key in hexadecimal digits
   * @param lastStep the newest step whose code was taken
   */
  public record FactorKey(String hex, long lastStep) {}

  /** The key of a second factor that is offered or on. */
  public Optional<FactorKey> factorKey(long id) {
    return handle
        .createQuery(
            "SELECT factor_key, factor_step FROM person WHERE id = :id AND factor <> 'none'")
        .bind("id", id)
        .map(
            (row, context) ->
                new FactorKey(row.getString("factor_key"), row.getLong("factor_step")))
        .findOne();
  }

  /** Keeps a key that asks for nothing until it is turned on. */
  public void offerFactor(long id, String hex) {
    factor(id, SecondFactor.OFFERED, Optional.of(hex));
  }

  public void turnFactorOn(long id) {
    handle
        .createUpdate("UPDATE person SET factor = :on WHERE id = :id")
        .bind("on", SecondFactor.ON.word())
        .bind("id", id)
        .execute();
  }

  public void endFactor(long id) {
    factor(id, SecondFactor.NONE, Optional.empty());
  }

  private void factor(long id, SecondFactor factor, Optional<String> hex) {
    handle
        .createUpdate(
            "UPDATE person SET factor = :factor, factor_key = :key, factor_step = 0 WHERE id = :id")
        .bind("factor", factor.word())
        .bind("key", hex.orElse(null))
        .bind("id", id)
        .execute();
  }

  /** Uses a step up; false where it, or a later one, was used before. */
  public boolean takeStep(long id, long step) {
    return handle
            .createUpdate(
                "UPDATE person SET factor_step = :step WHERE id = :id AND factor_step < :step")
            .bind("step", step)
            .bind("id", id)
            .execute()
        == 1;
  }

  /**
   * A sign-in that went well.
   *
   * @param address of the machine
   */
  public record SignedIn(Instant at, String address) {}

  /** Notes a sign-in, and gives the one before it. */
  public Optional<SignedIn> signedIn(long id, SignedIn now) {
    Optional<SignedIn> before =
        handle
            .createQuery(
                "SELECT signed_in_at, signed_in_from FROM person"
                    + " WHERE id = :id AND signed_in_at IS NOT NULL")
            .bind("id", id)
            .map(
                (row, context) ->
                    new SignedIn(
                        Times.toInstant(row.getLong("signed_in_at")),
                        row.getString("signed_in_from")))
            .findOne();
    handle
        .createUpdate("UPDATE person SET signed_in_at = :at, signed_in_from = :from WHERE id = :id")
        .bind("at", Times.toMicros(now.at()))
        .bind("from", now.address())
        .bind("id", id)
        .execute();
    return before;
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
        SecondFactor.fromWord(row.getString("factor")),
        Times.toInstant(row.getLong("added_at")));
  }
}
