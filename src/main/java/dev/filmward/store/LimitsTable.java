package dev.filmward.store;

import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.BaselineSpan;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.store.FigureTable.Series;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** Versions of control limits; they are added and never changed. */
public final class LimitsTable {
  private final Handle handle;

  LimitsTable(Handle handle) {
    this.handle = handle;
  }

  /** All versions for one characteristic, first to last. */
  public List<LimitsVersion> of(Series series) {
    return handle
        .createQuery(
            "SELECT * FROM limits WHERE line = :line AND structure = :structure"
                + " AND position = :position ORDER BY version")
        .bindMethods(series)
        .map((row, context) -> version(row))
        .list();
  }

  /** The newest version of any characteristic of a production; 0 where there is none. */
  public int newestVersion(String line, String structure) {
    return handle
        .createQuery(
            "SELECT coalesce(max(version), 0) FROM limits"
                + " WHERE line = :line AND structure = :structure")
        .bind("line", line)
        .bind("structure", structure)
        .mapTo(Integer.class)
        .one();
  }

  public void add(Series series, LimitsVersion version) {
    handle
        .createUpdate(
            "INSERT INTO limits (line, structure, position, version, centre, sigma, subgroups,"
                + " baseline_from, baseline_to, holds_from, author, reason, frozen_at)"
                + " VALUES (:line, :structure, :position, :version, :centre, :sigma, :subgroups,"
                + " :baselineFrom, :baselineTo, :holdsFrom, :author, :reason, :frozenAt)")
        .bindMethods(series)
        .bind("version", version.version())
        .bind("centre", version.limits().centre())
        .bind("sigma", version.limits().sigmaWithin())
        .bind("subgroups", version.baseline().subgroups())
        .bind("baselineFrom", Times.toMicros(version.baseline().from()))
        .bind("baselineTo", Times.toMicros(version.baseline().to()))
        .bind("holdsFrom", Times.toMicros(version.holdsFrom()))
        .bind("author", version.decision().author())
        .bind("reason", version.decision().reason())
        .bind("frozenAt", Times.toMicros(version.decision().at()))
        .execute();
  }

  private static LimitsVersion version(ResultSet row) throws SQLException {
    return new LimitsVersion(
        row.getInt("version"),
        new MeanRangeLimits(row.getDouble("centre"), row.getDouble("sigma")),
        new BaselineSpan(
            Times.toInstant(row.getLong("baseline_from")),
            Times.toInstant(row.getLong("baseline_to")),
            row.getLong("subgroups")),
        Times.toInstant(row.getLong("holds_from")),
        new Decision(
            row.getString("author"),
            row.getString("reason"),
            Times.toInstant(row.getLong("frozen_at"))));
  }
}
