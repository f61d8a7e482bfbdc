package dev.filmward.store;

import java.time.Instant;
import java.util.Collection;
import org.jdbi.v3.core.Handle;

/** What lets a person in without the second factor, once each, by hash. */
public final class RecoveryCodeTable {
  private final Handle handle;

  RecoveryCodeTable(Handle handle) {
    this.handle = handle;
  }

  /** Puts new ones in the place of all that a person had. */
  public void replace(long personId, Collection<String> hashes) {
    handle
        .createUpdate("DELETE FROM recovery_code WHERE person_id = :person")
        .bind("person", personId)
        .execute();
    for (String hash : hashes) {
      handle
          .createUpdate("INSERT INTO recovery_code (hash, person_id) VALUES (:hash, :person)")
          .bind("hash", hash)
          .bind("person", personId)
          .execute();
    }
  }

  /** Uses one up; false where the person has no such one, or used it before. */
  public boolean use(long personId, String hash, Instant at) {
    return handle
            .createUpdate(
                "UPDATE recovery_code SET used_at = :at"
                    + " WHERE hash = :hash AND person_id = :person AND used_at IS NULL")
            .bind("at", Times.toMicros(at))
            .bind("hash", hash)
            .bind("person", personId)
            .execute()
        == 1;
  }

  /** How many can still be used. */
  public int left(long personId) {
    return handle
        .createQuery(
            "SELECT count(*) FROM recovery_code WHERE person_id = :person AND used_at IS NULL")
        .bind("person", personId)
        .mapTo(Integer.class)
        .one();
  }
}
