package dev.filmward.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.result.ResultIterator;

/** Changes that people made, in a chain to which entries are only ever added. */
public final class AuditTable {
  private final Handle handle;

  AuditTable(Handle handle) {
    this.handle = handle;
  }

  /** An entry as it stands in the chain. */
  public record Link(long id, AuditEntry entry, String hash) {}

  /**
   * What a look at the whole chain showed.
   *
   * @param links entries up to the fault, or all of them
   * @param head hash of the last of these
   * @param fault what is wrong, in words, where something is
   */
  public record Check(long links, String head, Optional<String> fault) {}

  /** Adds an entry to the chain; in the transaction of the change that it tells of. */
  public void add(AuditEntry entry) {
    Optional<Link> last = newest(1).stream().findFirst();
    long id = last.map(Link::id).orElse(0L) + 1;
    String hash = AuditChain.hash(last.map(Link::hash).orElse(AuditChain.BEGINNING), id, entry);
    handle
        .createUpdate(
            "INSERT INTO audit (id, at, by_whom, action, subject, detail, hash)"
                + " VALUES (:id, :at, :by, :action, :subject, :detail, :hash)")
        .bind("id", id)
        .bind("at", Times.toMicros(entry.at()))
        .bind("by", entry.by())
        .bind("action", entry.action())
        .bind("subject", entry.subject())
        .bind("detail", entry.detail())
        .bind("hash", hash)
        .execute();
  }

  /** Newest first. */
  public List<Link> newest(int most) {
    return handle
        .createQuery("SELECT * FROM audit ORDER BY id DESC LIMIT :n")
        .bind("n", most)
        .map((row, context) -> link(row))
        .list();
  }

  /** Computes every hash again, from the first entry on. */
  public Check check() {
    try (ResultIterator<Link> links =
        handle
            .createQuery("SELECT * FROM audit ORDER BY id")
            .map((row, context) -> link(row))
            .iterator()) {
      return check(links);
    }
  }

  private static Check check(Iterator<Link> links) {
    String before = AuditChain.BEGINNING;
    long count = 0;
    while (links.hasNext()) {
      Link link = links.next();
      if (link.id() != count + 1) {
        return new Check(count, before, Optional.of("entry " + (count + 1) + " is missing"));
      }
      if (!link.hash().equals(AuditChain.hash(before, link.id(), link.entry()))) {
        return new Check(
            count, before, Optional.of("entry " + link.id() + " is not as it was written"));
      }
      before = link.hash();
      count++;
    }
    return new Check(count, before, Optional.empty());
  }

  private static Link link(ResultSet row) throws SQLException {
    AuditEntry entry =
        new AuditEntry(
            Times.toInstant(row.getLong("at")),
            row.getString("by_whom"),
            row.getString("action"),
            row.getString("subject"),
            row.getString("detail"));
    return new Link(row.getLong("id"), entry, row.getString("hash"));
  }
}
