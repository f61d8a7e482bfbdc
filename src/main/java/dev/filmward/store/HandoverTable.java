package dev.filmward.store;

import dev.filmward.store.SignedHandover.ShiftKey;
import dev.filmward.store.SignedHandover.Side;
import dev.filmward.store.SignedHandover.Signature;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** What was handed over and who signed it; rows are only ever added. */
public final class HandoverTable {
  private final Handle handle;

  HandoverTable(Handle handle) {
    this.handle = handle;
  }

  /** The newest one of a shift. */
  public Optional<SignedHandover> newest(ShiftKey key) {
    return handle
        .createQuery(
            "SELECT * FROM handover WHERE line = :line AND day = :day AND shift = :shift"
                + " ORDER BY id DESC LIMIT 1")
        .bindMethods(key)
        .map((row, context) -> handover(key, row))
        .findOne();
  }

  /** Whether anything was ever signed. */
  public boolean isEmpty() {
    return handle.createQuery("SELECT count(*) FROM handover").mapTo(Long.class).one() == 0;
  }

  /** Keeps what was signed, and gives its number. */
  public long add(ShiftKey key, String content) {
    return handle
        .createUpdate(
            "INSERT INTO handover (line, day, shift, content, digest)"
                + " VALUES (:line, :day, :shift, :content, :digest)")
        .bindMethods(key)
        .bind("content", content)
        .bind("digest", SignedHandover.digest(content))
        .executeAndReturnGeneratedKeys("id")
        .mapTo(Long.class)
        .one();
  }

  public void sign(long id, Signature signature, String digest) {
    handle
        .createUpdate(
            "INSERT INTO handover_signature (handover_id, side, by_whom, meaning, digest,"
                + " signed_at) VALUES (:id, :side, :by, :meaning, :digest, :at)")
        .bind("id", id)
        .bind("side", signature.side().word())
        .bind("by", Nul.shown(signature.by()))
        .bind("meaning", signature.meaning())
        .bind("digest", digest)
        .bind("at", Times.toMicros(signature.at()))
        .execute();
  }

  private SignedHandover handover(ShiftKey key, ResultSet row) throws SQLException {
    long id = row.getLong("id");
    return new SignedHandover(id, key, row.getString("content"), signatures(id));
  }

  private List<Signature> signatures(long id) {
    return handle
        .createQuery(
            "SELECT * FROM handover_signature WHERE handover_id = :id ORDER BY signed_at, side DESC")
        .bind("id", id)
        .map(
            (row, context) ->
                new Signature(
                    row.getString("side").equals(Side.OUTGOING.word())
                        ? Side.OUTGOING
                        : Side.INCOMING,
                    row.getString("by_whom"),
                    row.getString("meaning"),
                    Times.toInstant(row.getLong("signed_at"))))
        .list();
  }
}
