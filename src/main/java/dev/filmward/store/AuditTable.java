package dev.filmward.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
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
   * An entry with the hash that it follows.
   *
   * @param before empty where the entry before is missing
   */
  public record Chained(Link link, String before) {}

  /**
   * Entries of a time.
   *
   * @param from the first moment of it; from the beginning where left out
   * @param to the first moment after it; to the end where left out
   */
  public record Period(Optional<Instant> from, Optional<Instant> to) {
    public static Period always() {
      return new Period(Optional.empty(), Optional.empty());
    }
  }

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

  /** Hands on the entries of a time, oldest first, without keeping them. */
  public void each(Period period, Consumer<Chained> taker) {
    try (ResultIterator<Chained> entries =
        handle
            .createQuery(
                "SELECT a.*, (SELECT b.hash FROM audit b WHERE b.id = a.id - 1) AS hash_before"
                    + " FROM audit a WHERE a.at >= :from AND a.at < :to ORDER BY a.id")
            .bind("from", period.from().map(Times::toMicros).orElse(Long.MIN_VALUE))
            .bind("to", period.to().map(Times::toMicros).orElse(Long.MAX_VALUE))
            .map((row, context) -> chained(row))
            .iterator()) {
      entries.forEachRemaining(taker);
    }
  }

  private static Chained chained(ResultSet row) throws SQLException {
    Link link = link(row);
    String before = row.getString("hash_before");
    if (before == null) {
      before = link.id() == 1 ? AuditChain.BEGINNING : "";
    }
    return new Chained(link, before);
  }

  /** Computes every hash again, from the first entry on. */
  public Check check() {
    return check(Optional.empty());
  }

  /**
   * The same, and looks for a hash that was kept elsewhere: where it is missing, entries were cut
   * off at the end, or all were written anew.
   */
  public Check check(Optional<String> kept) {
    try (ResultIterator<Link> links =
        handle
            .createQuery("SELECT * FROM audit ORDER BY id")
            .map((row, context) -> link(row))
            .iterator()) {
      return check(links, kept);
    }
  }

  private static Check check(Iterator<Link> links, Optional<String> kept) {
    String before = AuditChain.BEGINNING;
    boolean isMissing = kept.isPresent() && !kept.get().equals(before);
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
      isMissing = isMissing && !before.equals(kept.get());
    }
    return new Check(
        count,
        before,
        isMissing
            ? Optional.of(
                "the hash " + kept.get() + " is not in it: entries were cut off or written anew")
            : Optional.empty());
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
