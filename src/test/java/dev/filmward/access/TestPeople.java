package dev.filmward.access;

import dev.filmward.access.SessionBook.Expiry;
import dev.filmward.people.Person;
import dev.filmward.people.PersonName;
import dev.filmward.people.Role;
import dev.filmward.people.Secret;
import dev.filmward.store.Store;
import java.nio.file.Path;
import java.time.Clock;

/** People of tests, made and signed in by the same desks that the server has. */
public final class TestPeople {
  /** An administrator. */
  public static final String KIM = "Kim";

  public static final String PASSWORD = "nine layers in one film";

  private TestPeople() {}

  /** Signs a person in, who is added where nobody has the name. No password is needed for it. */
  public static Secret signedIn(Store store, Clock clock, String name, Role role) {
    PeopleDesk desk = new PeopleDesk(store, clock);
    Person person =
        desk.named(name)
            .orElseGet(() -> desk.addWithoutPassword(new PersonName(name), role, "test"));
    return new SessionBook(store, clock, Expiry.A_SHIFT).begin(person, "127.0.0.1");
  }

  /** Signs Kim in to a data folder that nobody holds; a server started there knows it. */
  public static Secret signedIn(Path data) {
    try (Store store = Store.open(data)) {
      return signedIn(store, Clock.systemUTC(), KIM, Role.ADMINISTRATOR);
    }
  }

  /** Adds a person who has chosen {@link #PASSWORD}. */
  public static Person add(Store store, Clock clock, String name, Role role) {
    PeopleDesk desk = new PeopleDesk(store, clock);
    return desk.choosePassword(desk.add(new PersonName(name), role, "test").person(), PASSWORD);
  }
}
