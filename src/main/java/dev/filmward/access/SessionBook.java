package dev.filmward.access;

import dev.filmward.people.Person;
import dev.filmward.people.Secret;
import dev.filmward.store.PersonTable.SignedIn;
import dev.filmward.store.SessionTable.Session;
import dev.filmward.store.Store;
import dev.filmward.store.Tables;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Function;

/**
 * Who is signed in. A session ends when nothing was done in it for a while, and after a while in
 * any case; a restart does not end it. Thread-safe.
 */
public final class SessionBook {
  /** What was done is written down so finely, to spare the disk. */
  private static final Duration FINENESS = Duration.ofMinutes(1);

  /** So long an administrator is not asked for the password again; common practice, no source. */
  public static final Duration PROOF_HOLDS = Duration.ofMinutes(10);

  private final Store store;
  private final Clock clock;
  private final Expiry expiry;
  private final Remembered<Begun> remembered;

  public SessionBook(Store store, Clock clock, Expiry expiry) {
    this.store = store;
    this.clock = clock;
    this.expiry = expiry;
    this.remembered = new Remembered<>(hash -> store.watch(tables -> begun(tables, hash)));
  }

  private record Begun(Session session, Person person) {}

  private static Optional<Begun> begun(Tables tables, String hash) {
    return tables
        .sessions()
        .find(hash)
        .flatMap(
            session ->
                tables.people().find(session.personId()).map(person -> new Begun(session, person)));
  }

  /** How long a session lasts when nothing is done in it, and at most. */
  public record Expiry(Duration idle, Duration atMost) {
    /** A shift with its handover, on computers that several people share. */
    public static final Expiry A_SHIFT = new Expiry(Duration.ofHours(9), Duration.ofHours(12));

    public Expiry {
      if (idle.compareTo(Duration.ofMinutes(1)) < 0 || atMost.compareTo(idle) < 0) {
        throw new IllegalArgumentException(
            "a session lasts a minute or more when idle, and at least as long in all");
      }
    }
  }

  /** Begins a session with a sign-in, and clears away those that have ended. */
  public Secret begin(Person person, String address) {
    SignedIn now = new SignedIn(clock.instant(), address);
    return add(person, address, tables -> tables.people().signedIn(person.id(), now));
  }

  /**
   * Begins a session in the place of one that a change of the account ended; it is no sign-in.
   *
   * @param earlier as that session knew it
   */
  public Secret renew(Person person, String address, Optional<SignedIn> earlier) {
    return add(person, address, tables -> earlier);
  }

  private Secret add(
      Person person, String address, Function<Tables, Optional<SignedIn>> whenEarlier) {
    Secret secret = Secret.random();
    Instant now = clock.instant();
    store.change(
        tables -> {
          tables.sessions().clear(now.minus(expiry.atMost), now.minus(expiry.idle));
          Optional<SignedIn> earlier = whenEarlier.apply(tables);
          tables
              .sessions()
              .add(Session.beginning(secret.hash(), person.id(), now, earlier), address);
        });
    return secret;
  }

  /** The sign-in before the one that a session began with. */
  public Optional<SignedIn> earlier(Secret secret) {
    return store.read(tables -> tables.sessions().find(secret.hash())).flatMap(Session::earlier);
  }

  /** Whether the person gave the password in this session a short while ago. */
  public boolean isProven(Secret secret) {
    Instant since = clock.instant().minus(PROOF_HOLDS);
    return store
        .read(tables -> tables.sessions().find(secret.hash()))
        .filter(session -> session.provenAt().isAfter(since))
        .isPresent();
  }

  /** Notes that the person gave the password once more. */
  public void prove(Secret secret) {
    Instant now = clock.instant();
    store.change(tables -> tables.sessions().proven(secret.hash(), now));
  }

  /** Whose session it is, while it lasts. */
  public Optional<Person> whose(Secret secret) {
    return remembered
        .of(secret)
        .filter(begun -> lasts(begun.session))
        .map(Begun::person)
        .filter(person -> !person.isDisabled());
  }

  /** Notes that the person did something. */
  public void touch(Secret secret) {
    Instant now = clock.instant();
    boolean isDue =
        remembered
            .of(secret)
            .filter(begun -> begun.session.seenAt().plus(FINENESS).isBefore(now))
            .isPresent();
    if (isDue) {
      store.change(tables -> tables.sessions().seen(secret.hash(), now));
    }
  }

  public void end(Secret secret) {
    store.change(tables -> tables.sessions().end(secret.hash()));
  }

  /** Signs a person out everywhere. */
  public void endAllOf(Person person) {
    store.change(tables -> tables.sessions().endAllOf(person.id()));
  }

  private boolean lasts(Session session) {
    Instant now = clock.instant();
    return now.isBefore(session.seenAt().plus(expiry.idle))
        && now.isBefore(session.beganAt().plus(expiry.atMost));
  }
}
