package dev.filmward.store;

import dev.filmward.chart.ChartKind;
import dev.filmward.rule.Side;
import dev.filmward.rule.Signal;
import dev.filmward.rule.SignalTest;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/** Tests fulfilled under limits in force. */
public final class SignalTable {
  private final Handle handle;

  SignalTable(Handle handle) {
    this.handle = handle;
  }

  /** A signal and the sample at which it stands. */
  public record Stored(long sampleId, Signal signal) {}

  /** Puts what the tests say from a span's start on in the place of what they said before. */
  public void replace(Series series, Span span, List<Stored> signals) {
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
    PreparedBatch batch =
        handle.prepareBatch(
            "INSERT INTO signal (production_id, position, taken_at, sample_id, chart, test, side)"
                + " SELECT production_id, :position, taken_at, id, :chart, :test, :side"
                + " FROM sample WHERE id = :sampleId");
    for (Stored stored : signals) {
      batch
          .bind("sampleId", stored.sampleId())
          .bind("position", series.position())
          .bind("chart", stored.signal().chart().word())
          .bind("test", stored.signal().test().word())
          .bind("side", stored.signal().side().word())
          .add();
    }
    batch.execute();
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
