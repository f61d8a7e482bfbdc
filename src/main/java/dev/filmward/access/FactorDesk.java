package dev.filmward.access;

import dev.filmward.access.AccessAudit.Deed;
import dev.filmward.people.Person;
import dev.filmward.people.Secret;
import dev.filmward.store.PersonTable.FactorKey;
import dev.filmward.store.Store;
import dev.filmward.store.Tables;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;

/**
 * Second factors: a key is offered to a person, turned on with a code of it, and taken away again.
 * A code is taken once; so is each recovery code, of which only the hash is kept. Changes stand in
 * the audit chain. Thread-safe.
 */
public final class FactorDesk {
  private static final int RECOVERY_CODES = 10;

  private final Store store;
  private final Clock clock;
  private final AccountChange change;

  public FactorDesk(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
    this.change = new AccountChange(store, clock);
  }

  /** A person whose second factor is on, with the recovery codes, which are told once. */
  public record TurnedOn(Person person, List<String> recoveryCodes) {}

  /**
   * A new key, which asks for nothing until it is turned on.
   *
   * @throws IllegalStateException if one is on already
   */
  public OneTimeKey offer(Person person) {
    OneTimeKey key = OneTimeKey.random();
    store.change(
        tables -> {
          if (current(tables, person).hasSecondFactor()) {
            throw new IllegalStateException("a second factor is on already; turn it off first");
          }
          tables.people().offerFactor(person.id(), key.hex());
        });
    return key;
  }

  /**
   * Turns on what was offered; the person is signed out everywhere.
   *
   * @throws IllegalArgumentException if the code is not one of that key, now
   * @throws IllegalStateException if nothing was offered, or it is on already
   */
  public TurnedOn turnOn(Person person, String code) {
    List<String> codes = Stream.generate(Secret::recoveryCode).limit(RECOVERY_CODES).toList();
    Person changed =
        change.make(
            person.id(),
            person.name(),
            (tables, before) -> {
              if (before.factor() != Person.SecondFactor.OFFERED) {
                throw new IllegalStateException("no second factor was offered; begin anew");
              }
              if (fit(tables, person, code) != Fit.TAKEN) {
                throw new IllegalArgumentException(
                    "the code does not fit; see that the clock of the phone is right");
              }
              tables.people().turnFactorOn(person.id());
              tables.recoveryCodes().replace(person.id(), hashes(codes));
              return "second factor on";
            });
    return new TurnedOn(changed, codes);
  }

  /**
   * Takes a second factor away, by the person or by an administrator; the person is signed out
   * everywhere.
   *
   * @throws NoSuchElementException if there is no such person
   * @throws IllegalStateException if the person has none
   */
  public Person end(long id, String by) {
    return change.make(
        id,
        by,
        (tables, before) -> {
          if (!before.hasSecondFactor()) {
            throw new IllegalStateException(before.name() + " has no second factor");
          }
          tables.people().endFactor(id);
          tables.recoveryCodes().replace(id, List.of());
          return before.name().equals(by) ? "second factor off" : "second factor taken away";
        });
  }

  /** How many recovery codes a person can still use. */
  public int recoveryCodesLeft(Person person) {
    return store.read(tables -> tables.recoveryCodes().left(person.id()));
  }

  /** Whether somebody shows a code, or a recovery code, that is good; it is used up then. */
  boolean accepts(Person person, String typed) {
    return store.write(
        tables -> {
          Fit fit = fit(tables, person, typed);
          if (fit == Fit.USED_BEFORE) {
            note(tables, person, "a code of the second factor came twice; refused");
          }
          return fit == Fit.TAKEN || recovers(tables, person, typed);
        });
  }

  private enum Fit {
    TAKEN,
    USED_BEFORE,
    NONE
  }

  private Fit fit(Tables tables, Person person, String typed) {
    Optional<FactorKey> key = tables.people().factorKey(person.id());
    Instant now = clock.instant();
    OptionalLong step =
        key.map(one -> new OneTimeKey(one.hex()).stepOf(typed, now)).orElse(OptionalLong.empty());
    if (step.isEmpty()) {
      return Fit.NONE;
    }
    return tables.people().takeStep(person.id(), step.getAsLong()) ? Fit.TAKEN : Fit.USED_BEFORE;
  }

  private boolean recovers(Tables tables, Person person, String typed) {
    String hash = Secret.recoveryHash(typed);
    boolean isUsed = tables.recoveryCodes().use(person.id(), hash, clock.instant());
    if (isUsed) {
      int left = tables.recoveryCodes().left(person.id());
      note(tables, person, "signed in with a recovery code; " + left + " left");
    }
    return isUsed;
  }

  private void note(Tables tables, Person person, String what) {
    Deed deed = new Deed(person.name(), clock.instant());
    tables.audit().add(AccessAudit.account(deed, person, what));
  }

  private static Person current(Tables tables, Person person) {
    return tables.people().find(person.id()).orElseThrow();
  }

  private static List<String> hashes(List<String> codes) {
    return codes.stream().map(Secret::recoveryHash).toList();
  }
}
