package dev.filmward.access;

import dev.filmward.people.Person;
import dev.filmward.people.Secret;
import dev.filmward.store.SessionTable.Session;
import dev.filmward.store.Store;
import dev.filmward.store.Tables;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * Who is signed in. A session ends when nothing was done in it for a while, and after a while in
 * any case; a restart does not end it. Thread-safe.
 */
public final class SessionBook {
  /** What was done is written down so finely, to spare the disk. */
  private static final Duration FINENESS = Duration.ofMinutes(1);

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

  /** Begins a session, and clears away those that have ended. */
  public Secret begin(Person person, String address) {
    Secret secret = Secret.random();
    Instant now = clock.instant();
    store.change(
        tables -> {
          tables.sessions().clear(now.minus(expiry.atMost), now.minus(expiry.idle));
          tables.sessions().add(new Session(secret.hash(), person.id(), now, now), address);
        });
    return secret;
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
