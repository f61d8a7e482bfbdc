package dev.filmward.access;

import dev.filmward.people.Person;
import dev.filmward.people.PersonName;
import dev.filmward.store.PersonTable.Account;
import dev.filmward.store.Store;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * Lets people in by name and password. A name that nobody has costs as much time as one that
 * somebody has, and the answer is the same. Failures in a row are noted in the audit chain.
 * Thread-safe.
 */
public final class SignIn {
  private static final Throttle.Rule FOR_AN_ACCOUNT = new Throttle.Rule(3, Duration.ofMinutes(1));
  private static final Throttle.Rule FOR_AN_ADDRESS = new Throttle.Rule(15, Duration.ofMinutes(1));
  private static final int FIRST_NOTED = 5;

  private final Store store;
  private final Clock clock;
  private final Throttle accounts;
  private final Throttle addresses;

  public SignIn(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
    this.accounts = new Throttle(clock, FOR_AN_ACCOUNT);
    this.addresses = new Throttle(clock, FOR_AN_ADDRESS);
  }

  /**
   * What somebody gives, and from where.
   *
   * @param address of the machine
   */
  public record Attempt(String name, String password, String address) {
    private String key() {
      return PersonName.keyOf(name);
    }
  }

  /**
   * What became of it.
   *
   * @param person who is let in
   * @param delay how long to wait, where it was not looked at because it came too early
   */
  public record Outcome(Optional<Person> person, Duration delay) {}

  /** Looks at an attempt, unless too many failed just before. */
  public Outcome check(Attempt attempt) {
    Duration wait = enter(attempt);
    if (!wait.isZero()) {
      return new Outcome(Optional.empty(), wait);
    }
    String hashOfNothing = Nobody.HASH;
    Optional<Account> account = store.read(tables -> tables.people().named(attempt.name()));
    String hash = account.map(found -> found.credential().hash()).orElse(hashOfNothing);
    boolean fits = PasswordHash.fits(attempt.password(), hash);
    Optional<Person> person = account.filter(found -> fits && isUsable(found)).map(Account::person);
    if (person.isPresent()) {
      accounts.forget(attempt.key());
      addresses.takeBack(attempt.address());
    } else {
      noteFailure(attempt, account.map(Account::person));
    }
    return new Outcome(person, Duration.ZERO);
  }

  /** Made with the first attempt, whoever's it is. */
  private static final class Nobody {
    static final String HASH = PasswordHash.ofNothing();
  }

  /** One success does not clear an address, where somebody with an account could try others. */
  private Duration enter(Attempt attempt) {
    Duration forAddress = addresses.enter(attempt.address());
    if (!forAddress.isZero()) {
      return forAddress;
    }
    Duration forAccount = accounts.enter(attempt.key());
    if (!forAccount.isZero()) {
      addresses.takeBack(attempt.address());
    }
    return forAccount;
  }

  private boolean isUsable(Account account) {
    Optional<Instant> until = account.credential().oneTimeUntil();
    return !account.person().isDisabled()
        && (until.isEmpty() || clock.instant().isBefore(until.get()));
  }

  private void noteFailure(Attempt attempt, Optional<Person> person) {
    int ofAccount = accounts.inARow(attempt.key());
    int ofAddress = addresses.inARow(attempt.address());
    if (person.isPresent() && isNoted(ofAccount)) {
      note(person.get().name() + ", last from " + attempt.address(), ofAccount);
    } else if (isNoted(ofAddress)) {
      note("address " + attempt.address(), ofAddress);
    }
  }

  private void note(String subject, int inARow) {
    Instant now = clock.instant();
    store.change(tables -> tables.audit().add(AccessAudit.failures(now, subject, inARow)));
  }

  /** Five, then each time that it has doubled, so that nobody can fill the chain. */
  private static boolean isNoted(int inARow) {
    return inARow % FIRST_NOTED == 0 && Integer.bitCount(inARow / FIRST_NOTED) == 1;
  }
}
