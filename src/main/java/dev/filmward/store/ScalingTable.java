package dev.filmward.store;

import dev.filmward.gauge.calibration.FilmScalings;
import dev.filmward.gauge.calibration.LayerScalings;
import dev.filmward.gauge.calibration.Scale;
import dev.filmward.gauge.calibration.ScaleStep;
import dev.filmward.gauge.calibration.Scaling;
import dev.filmward.gauge.calibration.Scaling.Word;
import dev.filmward.gauge.calibration.TemperatureModel;
import dev.filmward.store.FigureTable.Series;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Update;
import org.jspecify.annotations.Nullable;

/** Versions of how readings as exported are re-scaled; they are added and never changed. */
public final class ScalingTable {

  private final Handle handle;

  ScalingTable(Handle handle) {
    this.handle = handle;
  }

  /** What a line makes of a structure. */
  public record Made(String line, String structure) {}

  private record Key(Series layer, int version) {
    private static Key of(ResultSet row) throws SQLException {
      Series layer =
          new Series(row.getString("line"), row.getString("structure"), row.getInt("position"));
      return new Key(layer, row.getInt("version"));
    }
  }

  /** All there is, by what a line makes. */
  public Map<Made, FilmScalings> all() {
    Map<Key, List<ScaleStep>> steps = steps();
    Map<Series, List<Scaling>> layers = new LinkedHashMap<>();
    handle
        .createQuery("SELECT * FROM scaling ORDER BY line, structure, position, version")
        .map(
            (row, context) ->
                layers
                    .computeIfAbsent(Key.of(row).layer, any -> new ArrayList<>())
                    .add(scaling(row, steps.getOrDefault(Key.of(row), List.of()))))
        .list();
    Map<Made, Map<Integer, LayerScalings>> films = new LinkedHashMap<>();
    layers.forEach(
        (layer, versions) ->
            films
                .computeIfAbsent(new Made(layer.line(), layer.structure()), any -> new HashMap<>())
                .put(layer.position(), new LayerScalings(versions)));
    Map<Made, FilmScalings> all = new LinkedHashMap<>();
    films.forEach((made, byPosition) -> all.put(made, new FilmScalings(byPosition)));
    return all;
  }

  public FilmScalings of(String line, String structure) {
    return all().getOrDefault(new Made(line, structure), FilmScalings.NONE);
  }

  /**
   * Adds a version.
   *
   * @param layer position of the reported layer, from 1
   */
  public void add(Series layer, Scaling scaling) {
    bound(
            "INSERT INTO scaling (line, structure, position, version, takes_back, calibration_id,"
                + " author, reason, decided_at) VALUES (:line, :structure, :position, :version,"
                + " :takesBack, :calibration, :author, :reason, :at)",
            layer,
            scaling)
        .bind("takesBack", scaling.takesBack())
        .bind("calibration", orNull(scaling.calibrationId()))
        .bind("author", Nul.shown(scaling.word().by()))
        .bind("reason", Nul.shown(scaling.word().reason()))
        .bind("at", Times.toMicros(scaling.word().at()))
        .execute();
    for (ScaleStep step : scaling.steps()) {
      bound(
              "INSERT INTO scaling_step (line, structure, position, version, holds_from, factor,"
                  + " offset_um, velocity_mps, at_c, percent_per_kelvin) VALUES (:line,"
                  + " :structure, :position, :version, :from, :factor, :offset, :velocity,"
                  + " :atC, :percent)",
              layer,
              scaling)
          .bind("from", Times.toMicros(step.holdsFrom()))
          .bind("factor", step.scale().factor())
          .bind("offset", step.scale().offsetUm())
          .bind("velocity", step.velocityMps())
          .bind("atC", step.temperature().map(TemperatureModel::atC).orElse(null))
          .bind("percent", step.temperature().map(TemperatureModel::percentPerKelvin).orElse(null))
          .execute();
    }
  }

  private Update bound(String sql, Series layer, Scaling scaling) {
    return handle.createUpdate(sql).bindMethods(layer).bind("version", scaling.version());
  }

  private static @Nullable Long orNull(OptionalLong id) {
    return id.isPresent() ? id.getAsLong() : null;
  }

  private Map<Key, List<ScaleStep>> steps() {
    Map<Key, List<ScaleStep>> steps = new HashMap<>();
    handle
        .createQuery("SELECT * FROM scaling_step")
        .map(
            (row, context) ->
                steps.computeIfAbsent(Key.of(row), any -> new ArrayList<>()).add(step(row)))
        .list();
    return steps;
  }

  private static ScaleStep step(ResultSet row) throws SQLException {
    return new ScaleStep(
        Times.toInstant(row.getLong("holds_from")),
        new Scale(row.getDouble("factor"), row.getDouble("offset_um")),
        row.getDouble("velocity_mps"),
        temperature(row));
  }

  private static Optional<TemperatureModel> temperature(ResultSet row) throws SQLException {
    double atC = row.getDouble("at_c");
    return row.wasNull()
        ? Optional.empty()
        : Optional.of(new TemperatureModel(atC, row.getDouble("percent_per_kelvin")));
  }

  private static Scaling scaling(ResultSet row, List<ScaleStep> steps) throws SQLException {
    long calibration = row.getLong("calibration_id");
    OptionalLong id = row.wasNull() ? OptionalLong.empty() : OptionalLong.of(calibration);
    return new Scaling(
        row.getInt("version"),
        steps,
        row.getInt("takes_back"),
        id,
        new Word(
            row.getString("author"),
            row.getString("reason"),
            Times.toInstant(row.getLong("decided_at"))));
  }
}
