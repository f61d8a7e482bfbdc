package dev.filmward.access;

import dev.filmward.access.AccessAudit.Deed;
import dev.filmward.people.PasswordRule;
import dev.filmward.people.Person;
import dev.filmward.people.PersonName;
import dev.filmward.people.Role;
import dev.filmward.people.Secret;
import dev.filmward.store.PersonTable.Account;
import dev.filmward.store.PersonTable.Credential;
import dev.filmward.store.Store;
import dev.filmward.store.Tables;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;

/**
 * Accounts of people: added, given a role, disabled, given a password. Each change stands in the
 * audit chain, and ends what the person was signed in to where it takes something away. One active
 * administrator always stays. Thread-safe.
 */
public final class PeopleDesk {
  /** How long a password that somebody else made can be used. */
  public static final Duration ONE_TIME = Duration.ofDays(7);

  private static final String FIRST_NAME = "Administrator";

  private final Store store;
  private final Clock clock;
  private final AccountChange change;

  public PeopleDesk(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
    this.change = new AccountChange(store, clock);
  }

  /** A person with a password for the first sign-in, which is told once and not kept. */
  public record Invited(Person person, String oneTimePassword) {}

  public List<Person> all() {
    return store.read(tables -> tables.people().all());
  }

  public Optional<Person> named(String name) {
    return store.read(tables -> tables.people().named(name)).map(Account::person);
  }

  /** An administrator, where there is nobody yet. */
  public Optional<Invited> first() {
    return all().isEmpty()
        ? Optional.of(add(new PersonName(FIRST_NAME), Role.ADMINISTRATOR, AccessAudit.SYSTEM))
        : Optional.empty();
  }

  /**
   * Adds a person.
   *
   * @throws IllegalStateException if somebody, or a token, has that name
   */
  public Invited add(PersonName name, Role role, String by) {
    String password = Secret.oneTimePassword();
    return new Invited(add(name, role, oneTime(password), by), password);
  }

  /** A person who cannot sign in with a password. */
  public Person addWithoutPassword(PersonName name, Role role, String by) {
    return add(name, role, new Credential(PasswordHash.ofNothing(), Optional.empty()), by);
  }

  private Person add(PersonName name, Role role, Credential credential, String by) {
    Deed deed = new Deed(by, clock.instant());
    return store.write(
        tables -> {
          if (tables.people().named(name.text()).isPresent() || tables.tokens().isNamed(name)) {
            throw new IllegalStateException("there is a \"" + name.text() + "\" already");
          }
          Person person = tables.people().add(name, role, credential, deed.at());
          tables.audit().add(AccessAudit.account(deed, person, "added as " + role.word()));
          return person;
        });
  }

  /**
   * Gives a person another role; sign-ins under the old one end.
   *
   * @throws NoSuchElementException if there is no such person
   * @throws IllegalStateException if no administrator would be left
   */
  public Person give(long id, Role role, String by) {
    return change.make(
        id,
        by,
        (tables, person) -> {
          keepAnAdministrator(tables, person, role);
          tables.people().give(id, role);
          return "role " + person.role().word() + " becomes " + role.word();
        });
  }

  /**
   * Lets a person in no more, from this moment on. With a new password the person may come back.
   *
   * @throws NoSuchElementException if there is no such person
   * @throws IllegalStateException if no administrator would be left
   */
  public Person disable(long id, String by) {
    return change.make(
        id,
        by,
        (tables, person) -> {
          keepAnAdministrator(tables, person, Role.VIEWER);
          tables.people().disable(id);
          return "disabled";
        });
  }

  /**
   * Gives a person a new password for one sign-in.
   *
   * @throws NoSuchElementException if there is no such person
   */
  public Invited reset(long id, String by) {
    String password = Secret.oneTimePassword();
    Credential credential = oneTime(password);
    Person person =
        change.make(
            id,
            by,
            (tables, before) -> {
              tables.people().credential(id, credential);
              return before.isDisabled() ? "enabled again, with a new password" : "password reset";
            });
    return new Invited(person, password);
  }

  /**
   * Sets a person's own new password; the person is signed out everywhere.
   *
   * @throws IllegalArgumentException saying why a password is not taken
   */
  public Person choosePassword(Person person, String chosen) {
    String checked = PasswordRule.checked(chosen, person.name());
    Credential credential = new Credential(PasswordHash.of(checked), Optional.empty());
    return change.make(
        person.id(),
        person.name(),
        (tables, before) -> {
          tables.people().credential(person.id(), credential);
          return "own password changed";
        });
  }

  private static void keepAnAdministrator(Tables tables, Person person, Role next) {
    boolean another =
        tables.people().all().stream()
            .filter(other -> other.id() != person.id() && !other.isDisabled())
            .anyMatch(other -> other.role() == Role.ADMINISTRATOR);
    if (person.role() == Role.ADMINISTRATOR && next != Role.ADMINISTRATOR && !another) {
      throw new IllegalStateException(
          person.name() + " is the last administrator; make somebody else one first");
    }
  }

  private Credential oneTime(String password) {
    return new Credential(PasswordHash.of(password), Optional.of(clock.instant().plus(ONE_TIME)));
  }
}
