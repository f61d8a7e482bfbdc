package dev.filmward.store;

import dev.filmward.store.PersonTable.SignedIn;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Who is signed in, by the hash of the secret that the browser shows. */
public final class SessionTable {
  private final Handle handle;

  SessionTable(Handle handle) {
    this.handle = handle;
  }

  /**
   * The times of a session, and whose it is.
   *
   * @param provenAt when the person last gave the password in it
   * @param earlier the sign-in before the one that began it
   */
  public record Session(
      String hash,
      long personId,
      Instant beganAt,
      Instant seenAt,
      Instant provenAt,
      Optional<SignedIn> earlier) {

    /** One that begins, for somebody who has just proven to be that person. */
    public static Session beginning(
        String hash, long personId, Instant now, Optional<SignedIn> earlier) {
      return new Session(hash, personId, now, now, now, earlier);
    }
  }

  /** Begins a session from the address of a machine. */
  public void add(Session session, String address) {
    handle
        .createUpdate(
            "INSERT INTO session (hash, person_id, began_at, seen_at, address, proven_at,"
                + " earlier_at, earlier_from) VALUES (:hash, :person, :began, :seen, :address,"
                + " :proven, :earlierAt, :earlierFrom)")
        .bind("hash", session.hash())
        .bind("person", session.personId())
        .bind("began", Times.toMicros(session.beganAt()))
        .bind("seen", Times.toMicros(session.seenAt()))
        .bind("address", address)
        .bind("proven", Times.toMicros(session.provenAt()))
        .bind("earlierAt", session.earlier().map(one -> Times.toMicros(one.at())).orElse(null))
        .bind("earlierFrom", session.earlier().map(SignedIn::address).orElse(null))
        .execute();
  }

  public Optional<Session> find(String hash) {
    return handle
        .createQuery("SELECT * FROM session WHERE hash = :hash")
        .bind("hash", hash)
        .map((row, context) -> session(row))
        .findOne();
  }

  private static Session session(ResultSet row) throws SQLException {
    String earlierFrom = row.getString("earlier_from");
    return new Session(
        row.getString("hash"),
        row.getLong("person_id"),
        Times.toInstant(row.getLong("began_at")),
        Times.toInstant(row.getLong("seen_at")),
        Times.toInstant(row.getLong("proven_at")),
        earlierFrom == null
            ? Optional.empty()
            : Optional.of(new SignedIn(Times.toInstant(row.getLong("earlier_at")), earlierFrom)));
  }

  /** Notes that the person gave the password once more. */
  public void proven(String hash, Instant at) {
    handle
        .createUpdate("UPDATE session SET proven_at = :at WHERE hash = :hash")
        .bind("at", Times.toMicros(at))
        .bind("hash", hash)
        .execute();
  }

  public void seen(String hash, Instant at) {
    handle
        .createUpdate("UPDATE session SET seen_at = :at WHERE hash = :hash")
        .bind("at", Times.toMicros(at))
        .bind("hash", hash)
        .execute();
  }

  public void end(String hash) {
    handle.createUpdate("DELETE FROM session WHERE hash = :hash").bind("hash", hash).execute();
  }

  public int endAllOf(long personId) {
    return handle
        .createUpdate("DELETE FROM session WHERE person_id = :id")
        .bind("id", personId)
        .execute();
  }

  public int count(long personId) {
    return handle
        .createQuery("SELECT count(*) FROM session WHERE person_id = :id")
        .bind("id", personId)
        .mapTo(Integer.class)
        .one();
  }

  /** Takes away those that nobody can use any more. */
  public void clear(Instant beganBefore, Instant seenBefore) {
    handle
        .createUpdate("DELETE FROM session WHERE began_at <= :began OR seen_at <= :seen")
        .bind("began", Times.toMicros(beganBefore))
        .bind("seen", Times.toMicros(seenBefore))
        .execute();
  }
}
