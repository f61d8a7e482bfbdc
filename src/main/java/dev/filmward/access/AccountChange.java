package dev.filmward.access;

import dev.filmward.access.AccessAudit.Deed;
import dev.filmward.people.Person;
import dev.filmward.store.Store;
import dev.filmward.store.Tables;
import java.time.Clock;
import java.util.NoSuchElementException;

/**
 * Changes an account in one transaction with its entry in the audit chain, and ends all that the
 * person is signed in to. Thread-safe.
 */
final class AccountChange {
  private final Store store;
  private final Clock clock;

  AccountChange(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
  }

  interface Step {
    /** What was done, in words. */
    String take(Tables tables, Person before);
  }

  /**
   * Gives the person as changed.
   *
   * @throws NoSuchElementException if there is no such person
   */
  Person make(long id, String by, Step step) {
    Deed deed = new Deed(by, clock.instant());
    return store.write(
        tables -> {
          Person before =
              tables
                  .people()
                  .find(id)
                  .orElseThrow(() -> new NoSuchElementException("no person " + id));
          tables.audit().add(AccessAudit.account(deed, before, step.take(tables, before)));
          tables.sessions().endAllOf(id);
          return tables.people().find(id).orElseThrow();
        });
  }
}
