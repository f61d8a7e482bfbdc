package dev.filmward.store;

import dev.filmward.gauge.Gauge;
import dev.filmward.gauge.calibration.GaugeSetting;
import dev.filmward.gauge.calibration.GaugeUse;
import dev.filmward.gauge.calibration.Scaling.Word;
import dev.filmward.gauge.calibration.Velocity;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** Gauges, the lines that they measure, and what they are set to; rows are only added. */
public final class GaugeTable {
  private final Handle handle;

  GaugeTable(Handle handle) {
    this.handle = handle;
  }

  /** A gauge as it was said last. */
  public record Kept(Gauge gauge, int version, Word word) {}

  /** The newest version of each, by name. */
  public List<Kept> all() {
    return handle
        .createQuery(
            "SELECT * FROM gauge g WHERE version = (SELECT max(o.version) FROM gauge o"
                + " WHERE o.name = g.name) ORDER BY name")
        .map(
            (row, context) ->
                new Kept(
                    new Gauge(
                        row.getString("name"),
                        row.getDouble("centre_mhz"),
                        row.getDouble("bandwidth")),
                    row.getInt("version"),
                    word(row)))
        .list();
  }

  /** Adds a gauge, or the next version of one. */
  public void add(Gauge gauge, Word word) {
    handle
        .createUpdate(
            "INSERT INTO gauge (name, version, centre_mhz, bandwidth, author, reason, decided_at)"
                + " VALUES (:name, (SELECT coalesce(max(version), 0) + 1 FROM gauge o"
                + " WHERE o.name = :name), :centreMhz, :bandwidth, :by, :reason, :at)")
        .bindMethods(gauge)
        .bind("by", word.by())
        .bind("reason", word.reason())
        .bind("at", Times.toMicros(word.at()))
        .execute();
  }

  /** Which gauge measured which line since when, in the order in which it was said. */
  public List<GaugeUse> uses() {
    return handle
        .createQuery("SELECT * FROM gauge_use ORDER BY id")
        .map(
            (row, context) ->
                new GaugeUse(
                    row.getString("line"),
                    row.getString("gauge"),
                    Times.toInstant(row.getLong("holds_from")),
                    word(row)))
        .list();
  }

  public void use(GaugeUse use) {
    handle
        .createUpdate(
            "INSERT INTO gauge_use (line, gauge, holds_from, author, reason, decided_at)"
                + " VALUES (:line, :gauge, :from, :by, :reason, :at)")
        .bind("line", use.line())
        .bind("gauge", use.gauge())
        .bind("from", Times.toMicros(use.holdsFrom()))
        .bind("by", use.word().by())
        .bind("reason", use.word().reason())
        .bind("at", Times.toMicros(use.word().at()))
        .execute();
  }

  /** What the gauge of a line was set to for a structure, in the order in which it was said. */
  public List<GaugeSetting> settings(String line, String structure) {
    return handle
        .createQuery(
            "SELECT * FROM gauge_setting WHERE line = :line AND structure = :structure ORDER BY id")
        .bind("line", line)
        .bind("structure", structure)
        .map((row, context) -> setting(row))
        .list();
  }

  public void set(GaugeSetting setting) {
    handle
        .createUpdate(
            "INSERT INTO gauge_setting (line, structure, layer, velocity_mps, offset_ns,"
                + " greatest_um, holds_from, author, reason, decided_at) VALUES (:line, :structure,"
                + " :layer, :velocity, :offset, :greatest, :from, :by, :reason, :at)")
        .bind("line", setting.line())
        .bind("structure", setting.structure())
        .bind("layer", setting.layer())
        .bind("velocity", setting.velocity().mps())
        .bind("offset", setting.velocity().offsetNs())
        .bind("greatest", orNull(setting.greatestUm()))
        .bind("from", Times.toMicros(setting.holdsFrom()))
        .bind("by", setting.word().by())
        .bind("reason", setting.word().reason())
        .bind("at", Times.toMicros(setting.word().at()))
        .execute();
  }

  private static GaugeSetting setting(ResultSet row) throws SQLException {
    double greatest = row.getDouble("greatest_um");
    OptionalDouble greatestUm =
        row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(greatest);
    return new GaugeSetting(
        row.getString("line"),
        row.getString("structure"),
        row.getString("layer"),
        new Velocity(row.getDouble("velocity_mps"), row.getDouble("offset_ns")),
        greatestUm,
        Times.toInstant(row.getLong("holds_from")),
        word(row));
  }

  private static Word word(ResultSet row) throws SQLException {
    return new Word(
        row.getString("author"),
        row.getString("reason"),
        Times.toInstant(row.getLong("decided_at")));
  }

  private static @Nullable Double orNull(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : null;
  }
}
