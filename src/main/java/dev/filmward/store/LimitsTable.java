package dev.filmward.store;

import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.BaselineSpan;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.store.FigureTable.Series;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;

/** Versions of control limits, and the decisions about them; they are added and never changed. */
public final class LimitsTable {
  private final Handle handle;

  LimitsTable(Handle handle) {
    this.handle = handle;
  }

  /** A version of the limits of a production. */
  public record VersionKey(String line, String structure, int version) {}

  /** A sample that a baseline leaves out. */
  public record Exclusion(String roll, String sample, String cause) {
    public Exclusion {
      if (cause.isBlank()) {
        throw new IllegalArgumentException(
            "sample " + sample + " is left out of the baseline: for what cause?");
      }
    }
  }

  /** All versions for one characteristic, first to last. */
  public List<LimitsVersion> of(Series series) {
    return handle
        .createQuery(
            "SELECT * FROM limits WHERE line = :line AND structure = :structure"
                + " AND position = :position ORDER BY version")
        .bindMethods(series)
        .map((row, context) -> new Row(row))
        .list()
        .stream()
        .map(
            row ->
                row.version(
                    changes(new VersionKey(series.line(), series.structure(), row.version))))
        .toList();
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

  /** Adds a version without its decisions; those are added once for all characteristics. */
  public void add(Series series, LimitsVersion version) {
    handle
        .createUpdate(
            "INSERT INTO limits (line, structure, position, version, centre, sigma, subgroups,"
                + " excluded, baseline_from, baseline_to, holds_from)"
                + " VALUES (:line, :structure, :position, :version, :centre, :sigma, :subgroups,"
                + " :excluded, :baselineFrom, :baselineTo, :holdsFrom)")
        .bindMethods(series)
        .bind("version", version.version())
        .bind("centre", version.limits().centre())
        .bind("sigma", version.limits().sigmaWithin())
        .bind("subgroups", version.baseline().subgroups())
        .bind("excluded", version.baseline().excluded())
        .bind("baselineFrom", Times.toMicros(version.baseline().from()))
        .bind("baselineTo", Times.toMicros(version.baseline().to()))
        .bind("holdsFrom", Times.toMicros(version.holdsFrom()))
        .execute();
  }

  public void decide(VersionKey key, StateChange change) {
    handle
        .createUpdate(
            "INSERT INTO limits_change (line, structure, version, state, author, reason,"
                + " decided_at)"
                + " VALUES (:line, :structure, :version, :state, :author, :reason, :at)")
        .bindMethods(key)
        .bind("state", change.state().word())
        .bind("author", change.decision().author())
        .bind("reason", change.decision().reason())
        .bind("at", Times.toMicros(change.decision().at()))
        .execute();
  }

  /** The decisions about a version, first to last. */
  public List<StateChange> changes(VersionKey key) {
    return handle
        .createQuery(
            "SELECT * FROM limits_change WHERE line = :line AND structure = :structure"
                + " AND version = :version ORDER BY id")
        .bindMethods(key)
        .map((row, context) -> change(row))
        .list();
  }

  public void exclude(VersionKey key, List<Exclusion> exclusions) {
    for (Exclusion exclusion : exclusions) {
      handle
          .createUpdate(
              "INSERT INTO limits_exclusion (line, structure, version, roll, sample, cause)"
                  + " VALUES (:line, :structure, :version, :roll, :sample, :cause)")
          .bindMethods(key)
          .bindMethods(exclusion)
          .execute();
    }
  }

  /** Keeps what is done about neighbouring samples that are alike; the first word stands. */
  public void remedy(VersionKey key, String remedy, Decision decision) {
    handle
        .createUpdate(
            "INSERT INTO limits_remedy (line, structure, version, remedy, author,"
                + " decided_at) VALUES (:line, :structure, :version, :remedy, :author, :at)"
                + " ON CONFLICT DO NOTHING")
        .bindMethods(key)
        .bind("remedy", remedy)
        .bind("author", decision.author())
        .bind("at", Times.toMicros(decision.at()))
        .execute();
  }

  public Optional<String> remedy(VersionKey key) {
    return handle
        .createQuery(
            "SELECT remedy FROM limits_remedy WHERE line = :line AND structure = :structure"
                + " AND version = :version")
        .bindMethods(key)
        .mapTo(String.class)
        .findOne();
  }

  /** Notes that a version was carried along with a re-scaling from an earlier one. */
  public void carried(VersionKey key, int source) {
    handle
        .createUpdate(
            "INSERT INTO limits_carried (line, structure, version, source)"
                + " VALUES (:line, :structure, :version, :source)")
        .bindMethods(key)
        .bind("source", source)
        .execute();
  }

  /** The versions that were carried along, each with the one that it came from. */
  public Map<Integer, Integer> carried(String line, String structure) {
    Map<Integer, Integer> sources = new TreeMap<>();
    handle
        .createQuery(
            "SELECT version, source FROM limits_carried"
                + " WHERE line = :line AND structure = :structure")
        .bind("line", line)
        .bind("structure", structure)
        .map((row, context) -> sources.put(row.getInt("version"), row.getInt("source")))
        .list();
    return sources;
  }

  public List<Exclusion> exclusions(VersionKey key) {
    return handle
        .createQuery(
            "SELECT * FROM limits_exclusion WHERE line = :line AND structure = :structure"
                + " AND version = :version ORDER BY roll, sample")
        .bindMethods(key)
        .map(
            (row, context) ->
                new Exclusion(
                    row.getString("roll"), row.getString("sample"), row.getString("cause")))
        .list();
  }

  private static StateChange change(ResultSet row) throws SQLException {
    return new StateChange(
        LimitsState.fromWord(row.getString("state")),
        new Decision(
            row.getString("author"),
            row.getString("reason"),
            Times.toInstant(row.getLong("decided_at"))));
  }

  private static final class Row {
    private final int version;
    private final MeanRangeLimits limits;
    private final BaselineSpan baseline;
    private final long holdsFrom;

    private Row(ResultSet row) throws SQLException {
      version = row.getInt("version");
      limits = new MeanRangeLimits(row.getDouble("centre"), row.getDouble("sigma"));
      baseline =
          new BaselineSpan(
              Times.toInstant(row.getLong("baseline_from")),
              Times.toInstant(row.getLong("baseline_to")),
              row.getLong("subgroups"),
              row.getLong("excluded"));
      holdsFrom = row.getLong("holds_from");
    }

    private LimitsVersion version(List<StateChange> changes) {
      return new LimitsVersion(version, limits, baseline, Times.toInstant(holdsFrom), changes);
    }
  }
}
