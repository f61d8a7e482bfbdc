package dev.filmward.store;

import dev.filmward.store.ShiftNote.Kind;
import dev.filmward.store.ShiftNote.Settled;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;

/** Notes of shifts. They are added and settled, never changed and never taken away. */
public final class ShiftNoteTable {
  private final Handle handle;

  ShiftNoteTable(Handle handle) {
    this.handle = handle;
  }

  /**
   * What is looked for.
   *
   * @param line empty for all
   * @param words each of which must stand in it; large and small letters are alike
   */
  public record Search(String line, String words, int most) {}

  public ShiftNote add(ShiftNote note) {
    long id =
        handle
            .createUpdate(
                "INSERT INTO shift_note (line, at, written_at, by_whom, text, roll, folded,"
                    + " follow_up) VALUES (:line, :at, :writtenAt, :by, :text, :roll, :folded,"
                    + " :followUp)")
            .bind("line", Nul.shown(note.line()))
            .bind("at", Times.toMicros(note.at()))
            .bind("writtenAt", Times.toMicros(note.writtenAt()))
            .bind("by", Nul.shown(note.by()))
            .bind("text", Nul.shown(note.text()))
            .bind("roll", Nul.shown(note.roll()))
            .bind("folded", Nul.shown(folded(note)))
            .bind("followUp", note.kind() == Kind.FOLLOW_UP ? 1 : 0)
            .executeAndReturnGeneratedKeys("id")
            .mapTo(Long.class)
            .one();
    return find(id).orElseThrow();
  }

  public Optional<ShiftNote> find(long id) {
    return list(handle.createQuery("SELECT * FROM shift_note WHERE id = :id").bind("id", id))
        .stream()
        .findFirst();
  }

  /** Says how a thing to be done came out; the first word stands. */
  public void settle(long id, Settled settled) {
    handle
        .createUpdate(
            "UPDATE shift_note SET settled_at = :at, settled_by = :by, outcome = :outcome"
                + " WHERE id = :id AND settled_at IS NULL")
        .bind("id", id)
        .bind("at", Times.toMicros(settled.at()))
        .bind("by", Nul.shown(settled.by()))
        .bind("outcome", Nul.shown(settled.outcome()))
        .execute();
  }

  /** About a time, its end left out; oldest first. */
  public List<ShiftNote> within(Instant from, Instant to) {
    return list(
        handle
            .createQuery("SELECT * FROM shift_note WHERE at >= :from AND at < :to ORDER BY at, id")
            .bind("from", Times.toMicros(from))
            .bind("to", Times.toMicros(to)));
  }

  /** From before a moment, to be done, and not settled before it; oldest first. */
  public List<ShiftNote> carriedOver(Instant moment) {
    return list(
        handle
            .createQuery(
                "SELECT * FROM shift_note WHERE at < :moment AND follow_up = 1"
                    + " AND (settled_at IS NULL OR settled_at >= :moment) ORDER BY at, id")
            .bind("moment", Times.toMicros(moment)));
  }

  /** Newest first. */
  public List<ShiftNote> search(Search search) {
    String[] words = search.words().strip().toLowerCase(Locale.ROOT).split("\\s+", -1);
    StringBuilder sql = new StringBuilder("SELECT * FROM shift_note WHERE 1 = 1");
    if (!search.line().isEmpty()) {
      sql.append(" AND line = :line");
    }
    for (int i = 0; i < words.length; i++) {
      sql.append(" AND folded LIKE :word").append(i).append(" ESCAPE '!'");
    }
    Query query = handle.createQuery(sql + " ORDER BY at DESC, id DESC LIMIT :most");
    query.bind("most", search.most());
    if (!search.line().isEmpty()) {
      query.bind("line", search.line());
    }
    for (int i = 0; i < words.length; i++) {
      query.bind("word" + i, "%" + escaped(Nul.shown(words[i])) + "%");
    }
    return list(query);
  }

  private static String escaped(String word) {
    return word.replace("!", "!!").replace("%", "!%").replace("_", "!_");
  }

  private static String folded(ShiftNote note) {
    return String.join(" ", note.text(), note.line(), note.roll(), note.by())
        .toLowerCase(Locale.ROOT);
  }

  private static List<ShiftNote> list(Query query) {
    return query.map((row, context) -> note(row)).list();
  }

  private static ShiftNote note(ResultSet row) throws SQLException {
    String settledBy = row.getString("settled_by");
    Optional<Settled> settled =
        settledBy == null
            ? Optional.empty()
            : Optional.of(
                new Settled(
                    Times.toInstant(row.getLong("settled_at")),
                    settledBy,
                    row.getString("outcome")));
    return new ShiftNote(
        row.getLong("id"),
        row.getString("line"),
        Times.toInstant(row.getLong("at")),
        Times.toInstant(row.getLong("written_at")),
        row.getString("by_whom"),
        row.getString("text"),
        row.getString("roll"),
        row.getInt("follow_up") == 1 ? Kind.FOLLOW_UP : Kind.NOTE,
        settled);
  }
}
