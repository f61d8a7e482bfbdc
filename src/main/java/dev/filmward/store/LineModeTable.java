package dev.filmward.store;

import dev.filmward.alarm.LineMode;
import dev.filmward.alarm.LineModeChange;
import dev.filmward.alarm.LineModes;
import dev.filmward.chart.LimitsVersion.Decision;
import org.jdbi.v3.core.Handle;

/** What lines were doing, as people said it; rows are added and never changed. */
public final class LineModeTable {
  private final Handle handle;

  LineModeTable(Handle handle) {
    this.handle = handle;
  }

  public LineModes of(String line) {
    return new LineModes(
        handle
            .createQuery("SELECT * FROM line_mode WHERE line = :line ORDER BY since, id")
            .bind("line", line)
            .map(
                (row, context) ->
                    new LineModeChange(
                        row.getString("line"),
                        LineMode.fromWord(row.getString("mode")),
                        Times.toInstant(row.getLong("since")),
                        row.getInt("samples"),
                        new Decision(
                            row.getString("author"),
                            row.getString("reason"),
                            Times.toInstant(row.getLong("decided_at")))))
            .list());
  }

  public void add(LineModeChange change) {
    handle
        .createUpdate(
            "INSERT INTO line_mode (line, mode, since, samples, author, reason, decided_at)"
                + " VALUES (:line, :mode, :since, :samples, :author, :reason, :at)")
        .bind("line", change.line())
        .bind("mode", change.mode().word())
        .bind("since", Times.toMicros(change.since()))
        .bind("samples", change.samples())
        .bind("author", change.decision().author())
        .bind("reason", change.decision().reason())
        .bind("at", Times.toMicros(change.decision().at()))
        .execute();
  }
}
