package dev.filmward.store;

import dev.filmward.gauge.screen.Misread;
import dev.filmward.gauge.screen.ScreeningRules;
import dev.filmward.gauge.screen.Treatment;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;

/** How readings are screened; versions are added and never changed. */
public final class ScreeningVersionTable {
  private final Handle handle;

  ScreeningVersionTable(Handle handle) {
    this.handle = handle;
  }

  /** All versions for what a line makes of a structure, first to last. */
  public List<ScreeningVersion> of(String line, String structure) {
    List<ScreeningVersion> bare =
        query(
                "SELECT * FROM screening_version WHERE line = :line AND structure = :structure"
                    + " ORDER BY version",
                line,
                structure)
            .map((row, context) -> version(row))
            .list();
    if (bare.isEmpty()) {
      return bare;
    }
    Map<Integer, Map<Misread, Treatment>> choices = choices(line, structure);
    return bare.stream()
        .map(
            each ->
                new ScreeningVersion(
                    each.version(),
                    new ScreeningRules(
                        choices.getOrDefault(each.version(), Map.of()), each.rules().gaugeMhz()),
                    each.holdsFrom(),
                    each.decision()))
        .toList();
  }

  private Query query(String sql, String line, String structure) {
    return handle.createQuery(sql).bind("line", line).bind("structure", structure);
  }

  private static ScreeningVersion version(ResultSet row) throws SQLException {
    double mhz = row.getDouble("gauge_mhz");
    OptionalDouble gaugeMhz = row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(mhz);
    return new ScreeningVersion(
        row.getInt("version"),
        new ScreeningRules(Map.of(), gaugeMhz),
        Times.toInstant(row.getLong("holds_from")),
        ScreeningTable.decision(row));
  }

  private Map<Integer, Map<Misread, Treatment>> choices(String line, String structure) {
    Map<Integer, Map<Misread, Treatment>> choices = new HashMap<>();
    query(
            "SELECT * FROM screening_choice WHERE line = :line AND structure = :structure",
            line,
            structure)
        .map(
            (row, context) ->
                choices
                    .computeIfAbsent(row.getInt("version"), version -> new EnumMap<>(Misread.class))
                    .put(
                        Misread.fromWord(row.getString("kind")),
                        Treatment.fromWord(row.getString("treatment"))))
        .list();
    return choices;
  }

  /** Adds a version. */
  public void add(String line, String structure, ScreeningVersion version) {
    OptionalDouble mhz = version.rules().gaugeMhz();
    handle
        .createUpdate(
            "INSERT INTO screening_version (line, structure, version, gauge_mhz, holds_from,"
                + " author, reason, decided_at) VALUES (:line, :structure, :version, :mhz, :from,"
                + " :author, :reason, :at)")
        .bind("line", line)
        .bind("structure", structure)
        .bind("version", version.version())
        .bind("mhz", mhz.isPresent() ? (Double) mhz.getAsDouble() : null)
        .bind("from", Times.toMicros(version.holdsFrom()))
        .bind("author", version.decision().author())
        .bind("reason", version.decision().reason())
        .bind("at", Times.toMicros(version.decision().at()))
        .execute();
    version
        .rules()
        .all()
        .forEach(
            (kind, treatment) ->
                handle
                    .createUpdate(
                        "INSERT INTO screening_choice (line, structure, version, kind, treatment)"
                            + " VALUES (:line, :structure, :version, :kind, :treatment)")
                    .bind("line", line)
                    .bind("structure", structure)
                    .bind("version", version.version())
                    .bind("kind", kind.word())
                    .bind("treatment", treatment.word())
                    .execute());
  }
}
