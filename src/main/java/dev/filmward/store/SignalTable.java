package dev.filmward.store;

import dev.filmward.chart.ChartKind;
import dev.filmward.rule.Side;
import dev.filmward.rule.Signal;
import dev.filmward.rule.SignalTest;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** Tests fulfilled under limits in force. */
public final class SignalTable {
  private final Handle handle;
  private final Database database;

  SignalTable(Handle handle, Database database) {
    this.handle = handle;
    this.database = database;
  }

  /** A signal and the sample at which it stands. */
  public record Stored(long sampleId, Signal signal) {}

  /** A signal with the time of its sample. */
  public record Placed(Stored stored, Instant takenAt) {}

  /** Puts what the tests say from a span's start on in the place of what they said before. */
  public void replace(Series series, Span span, List<Placed> signals) {
    handle
        .createUpdate(
            "DELETE FROM signal WHERE production_id = "
                + BlockTable.PRODUCTION
                + " AND position = :position AND taken_at BETWEEN :from AND :to")
        .bindMethods(series)
        .bind("from", Times.toMicros(span.from()))
        .bind("to", Times.toMicros(span.to()))
        .execute();
    if (signals.isEmpty()) {
      return;
    }
    long productionId =
        handle
            .createQuery("SELECT " + BlockTable.PRODUCTION)
            .bindMethods(series)
            .mapTo(Long.class)
            .one();
    try (RowInsert rows = rows()) {
      for (Placed placed : signals) {
        Signal signal = placed.stored.signal();
        rows.number(productionId)
            .number(series.position())
            .number(Times.toMicros(placed.takenAt))
            .number(placed.stored.sampleId())
            .text(signal.chart().word())
            .text(signal.test().word())
            .text(signal.side().word())
            .endRow();
      }
    }
  }

  private RowInsert rows() {
    return database.insert(
        handle,
        "signal",
        "production_id",
        "position",
        "taken_at",
        "sample_id",
        "chart",
        "test",
        "side");
  }

  public List<Stored> within(Series series, Span span) {
    return handle
        .createQuery(
            "SELECT g.sample_id, g.chart, g.test, g.side FROM signal g"
                + " JOIN sample s ON s.id = g.sample_id"
                + " WHERE g.production_id = "
                + BlockTable.PRODUCTION
                + " AND g.position = :position AND g.taken_at BETWEEN :from AND :to"
                + " ORDER BY g.taken_at, s.roll, s.sample, g.chart, g.test, g.side")
        .bindMethods(series)
        .bind("from", Times.toMicros(span.from()))
        .bind("to", Times.toMicros(span.to()))
        .map((row, context) -> new Stored(row.getLong("sample_id"), signal(row)))
        .list();
  }

  static Signal signal(ResultSet row) throws SQLException {
    return new Signal(
        ChartKind.fromWord(row.getString("chart")),
        SignalTest.fromWord(row.getString("test")),
        Side.fromWord(row.getString("side")));
  }
}
