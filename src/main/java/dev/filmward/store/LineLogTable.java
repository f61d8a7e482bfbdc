package dev.filmward.store;

import dev.filmward.diagnosis.Boundary;
import dev.filmward.diagnosis.LineEntry;
import dev.filmward.diagnosis.LineEntry.Note;
import dev.filmward.store.FigureTable.Span;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/** What happened at lines, as people wrote it down; rows stay. */
public final class LineLogTable {
  private final Handle handle;

  LineLogTable(Handle handle) {
    this.handle = handle;
  }

  /** What happened at a line in a span, withdrawn entries too, in the order of time. */
  public List<LineEntry> within(String line, Span span) {
    return handle
        .createQuery(
            "SELECT * FROM line_log WHERE line = :line AND at BETWEEN :from AND :to"
                + " ORDER BY at, id")
        .bind("line", line)
        .bind("from", Times.toMicros(span.from()))
        .bind("to", Times.toMicros(span.to()))
        .map((row, context) -> entry(row))
        .list();
  }

  public Optional<LineEntry> find(long id) {
    return handle
        .createQuery("SELECT * FROM line_log WHERE id = :id")
        .bind("id", id)
        .map((row, context) -> entry(row))
        .findOne();
  }

  /** Adds an entry, and gives its id. */
  public long add(LineEntry entry) {
    Boundary what = entry.what();
    return handle
        .createUpdate(
            "INSERT INTO line_log (line, kind, at, positions, words, by_whom, written_at)"
                + " VALUES (:line, :kind, :at, :positions, :words, :by, :written)")
        .bind("line", Nul.shown(entry.line()))
        .bind("kind", what.kind().word())
        .bind("at", Times.toMicros(what.at()))
        .bind(
            "positions",
            what.positions().stream().map(String::valueOf).collect(Collectors.joining(" ")))
        .bind("words", Nul.shown(what.words()))
        .bind("by", Nul.shown(entry.written().by()))
        .bind("written", Times.toMicros(entry.written().at()))
        .executeAndReturnGeneratedKeys("id")
        .mapTo(Long.class)
        .one();
  }

  public void withdraw(long id, Note note) {
    handle
        .createUpdate(
            "UPDATE line_log SET withdrawn_at = :at, withdrawn_by = :by, withdrawn_why = :why"
                + " WHERE id = :id")
        .bind("id", id)
        .bind("at", Times.toMicros(note.at()))
        .bind("by", Nul.shown(note.by()))
        .bind("why", Nul.shown(note.why()))
        .execute();
  }

  private static LineEntry entry(ResultSet row) throws SQLException {
    List<Integer> positions =
        Arrays.stream(row.getString("positions").split(" "))
            .filter(word -> !word.isEmpty())
            .map(Integer::valueOf)
            .toList();
    Boundary what =
        new Boundary(
            Boundary.Kind.fromWord(row.getString("kind")),
            Times.toInstant(row.getLong("at")),
            positions,
            row.getString("words"));
    String withdrawnBy = row.getString("withdrawn_by");
    return new LineEntry(
        row.getLong("id"),
        row.getString("line"),
        what,
        new Note(row.getString("by_whom"), "", Times.toInstant(row.getLong("written_at"))),
        withdrawnBy == null
            ? Optional.empty()
            : Optional.of(
                new Note(
                    withdrawnBy,
                    row.getString("withdrawn_why"),
                    Times.toInstant(row.getLong("withdrawn_at")))));
  }
}
