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
 * Lets people in by name and password, and by a code where they have a second factor. A name that
 * nobody has costs as much time as one that somebody has, and the answer is the same. Failures in a
 * row are noted in the audit chain. Thread-safe.
 */
public final class SignIn {
  private static final Throttle.Rule FOR_AN_ACCOUNT = new Throttle.Rule(3, Duration.ofMinutes(1));
  private static final Throttle.Rule FOR_AN_ADDRESS = new Throttle.Rule(15, Duration.ofMinutes(1));

  /**
   * RFC 4226, 7.3, asks for growing delays: 4 guesses an hour of a million codes, 3 of them good.
   */
  private static final Throttle.Rule FOR_CODES = new Throttle.Rule(3, Duration.ofMinutes(15));

  private static final int FIRST_NOTED = 5;

  private final Store store;
  private final Clock clock;
  private final Throttle accounts;
  private final Throttle addresses;
  private final Throttle codes;
  private final FactorDesk factors;

  public SignIn(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
    this.accounts = new Throttle(clock, FOR_AN_ACCOUNT);
    this.addresses = new Throttle(clock, FOR_AN_ADDRESS);
    this.codes = new Throttle(clock, FOR_CODES);
    this.factors = new FactorDesk(store, clock);
  }

  /**
   * What somebody gives, and from where.
   *
   * @param code of the second factor, or a recovery code
   * @param address of the machine
   */
  public record Attempt(String name, String password, Optional<String> code, String address) {
    /** Without a code. */
    public Attempt(String name, String password, String address) {
      this(name, password, Optional.empty(), address);
    }

    private String key() {
      return PersonName.keyOf(name);
    }
  }

  /** What is still to be given. */
  public enum Wanting {
    NOTHING,
    /** A name and a password that belong together. */
    PASSWORD,
    /** They do; the code of the second factor was not given. */
    CODE,
    /** They do; the code that was given does not fit, or was used before. */
    ANOTHER_CODE
  }

  /**
   * What became of it.
   *
   * @param person who is let in
   * @param delay how long to wait, where it was not looked at because it came too early
   */
  public record Outcome(Optional<Person> person, Duration delay, Wanting wanting) {
    private static Outcome in(Person person) {
      return new Outcome(Optional.of(person), Duration.ZERO, Wanting.NOTHING);
    }

    private static Outcome wanting(Wanting what) {
      return new Outcome(Optional.empty(), Duration.ZERO, what);
    }

    private static Outcome tooEarly(Duration delay) {
      return new Outcome(Optional.empty(), delay, Wanting.PASSWORD);
    }
  }

  /** Looks at an attempt to sign in, unless too many failed just before. */
  public Outcome check(Attempt attempt) {
    Outcome byPassword = checkPassword(attempt);
    Optional<Person> person = byPassword.person();
    return person.isPresent() && person.get().hasSecondFactor()
        ? checkCode(attempt, person.get())
        : byPassword;
  }

  /** Looks at the password alone, for somebody who is signed in. */
  public Outcome checkPassword(Attempt attempt) {
    Duration wait = enter(attempt);
    if (!wait.isZero()) {
      return Outcome.tooEarly(wait);
    }
    String hashOfNothing = Nobody.HASH;
    Optional<Account> account = store.read(tables -> tables.people().named(attempt.name()));
    String hash = account.map(found -> found.credential().hash()).orElse(hashOfNothing);
    boolean fits = PasswordHash.fits(attempt.password(), hash);
    Optional<Person> person = account.filter(found -> fits && isUsable(found)).map(Account::person);
    if (person.isEmpty()) {
      noteFailure(attempt, account.map(Account::person));
      return Outcome.wanting(Wanting.PASSWORD);
    }
    accounts.forget(attempt.key());
    addresses.takeBack(attempt.address());
    return Outcome.in(person.get());
  }

  /** Failures are counted apart from those of passwords, so that a good password clears none. */
  private Outcome checkCode(Attempt attempt, Person person) {
    if (attempt.code().isEmpty()) {
      return Outcome.wanting(Wanting.CODE);
    }
    Duration wait = codes.enter(attempt.key());
    if (!wait.isZero()) {
      return Outcome.tooEarly(wait);
    }
    if (factors.accepts(person, attempt.code().get())) {
      codes.forget(attempt.key());
      return Outcome.in(person);
    }
    int inARow = codes.inARow(attempt.key());
    if (isNoted(inARow)) {
      note(person.name() + ", wrong codes, last from " + attempt.address(), inARow);
    }
    return Outcome.wanting(Wanting.ANOTHER_CODE);
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
