package dev.filmward.store;

import dev.filmward.gauge.calibration.Calibration;
import dev.filmward.gauge.calibration.Calibration.Subject;
import dev.filmward.gauge.calibration.FittedVelocity;
import dev.filmward.gauge.calibration.PieceReadings;
import dev.filmward.gauge.calibration.ReferencePiece;
import dev.filmward.gauge.calibration.Scaling.Word;
import dev.filmward.gauge.calibration.TemperatureModel;
import dev.filmward.gauge.calibration.Velocity;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jspecify.annotations.Nullable;

/** Records of calibrations with their pieces and readings; they are added and never changed. */
public final class CalibrationTable {
  private final Handle handle;

  CalibrationTable(Handle handle) {
    this.handle = handle;
  }

  /** Keeps a calibration, and gives it with its number. */
  public Calibration add(Calibration calibration) {
    long id =
        handle
            .createQuery("SELECT coalesce(max(id), 0) + 1 FROM calibration")
            .mapTo(Long.class)
            .one();
    FittedVelocity found = calibration.found();
    handle
        .createUpdate(
            "INSERT INTO calibration (id, gauge, structure, layer, resin, velocity_before_mps,"
                + " offset_before_ns, velocity_mps, u_velocity_mps, offset_ns, u_offset_ns,"
                + " covariance, chi_square, degrees, temperature_c, percent_per_kelvin, warnings,"
                + " author, reason, done_at) VALUES (:id, :gauge, :structure, :layer, :resin,"
                + " :velocityBefore, :offsetBefore, :velocity, :uVelocity, :offset, :uOffset,"
                + " :covariance, :chiSquare, :degrees, :temperature, :coefficient, :warnings,"
                + " :author, :reason, :at)")
        .bind("id", id)
        .bindMethods(calibration.subject())
        .bind("velocityBefore", calibration.before().mps())
        .bind("offsetBefore", calibration.before().offsetNs())
        .bind("velocity", found.velocity().mps())
        .bind("uVelocity", found.uMps())
        .bind("offset", found.velocity().offsetNs())
        .bind("uOffset", found.uOffsetNs())
        .bind("covariance", found.covariance())
        .bind("chiSquare", orNull(found.chiSquare()))
        .bind("degrees", found.degrees())
        .bind("temperature", calibration.temperature().map(TemperatureModel::atC).orElse(null))
        .bind(
            "coefficient",
            calibration.temperature().map(TemperatureModel::percentPerKelvin).orElse(null))
        .bind("warnings", String.join("\n", calibration.doubts()))
        .bind("author", calibration.word().by())
        .bind("reason", calibration.word().reason())
        .bind("at", Times.toMicros(calibration.word().at()))
        .execute();
    addPieces(id, calibration.pieces());
    return calibration.withId(id);
  }

  public Optional<Calibration> find(long id) {
    return list(handle.createQuery("SELECT * FROM calibration WHERE id = :id").bind("id", id))
        .stream()
        .findFirst();
  }

  /** The newest, newest first. */
  public List<Calibration> newest(int most) {
    return list(
        handle
            .createQuery("SELECT * FROM calibration ORDER BY done_at DESC, id DESC LIMIT :most")
            .bind("most", most));
  }

  /** Those that were done in a span of time, oldest first; its end does not count. */
  public List<Calibration> between(Instant from, Instant to) {
    return list(
        handle
            .createQuery(
                "SELECT * FROM calibration WHERE done_at >= :from AND done_at < :to"
                    + " ORDER BY done_at, id")
            .bind("from", Times.toMicros(from))
            .bind("to", Times.toMicros(to)));
  }

  private List<Calibration> list(Query query) {
    return query.map((row, context) -> calibration(row)).list().stream()
        .map(this::withPieces)
        .toList();
  }

  private void addPieces(long id, List<PieceReadings> pieces) {
    for (int place = 0; place < pieces.size(); place++) {
      PieceReadings readings = pieces.get(place);
      handle
          .createUpdate(
              "INSERT INTO calibration_piece (calibration_id, place, name, thickness_um,"
                  + " expanded_um, k, material, how_known) VALUES (:id, :place, :name,"
                  + " :thicknessUm, :expandedUm, :k, :material, :howKnown)")
          .bind("id", id)
          .bind("place", place)
          .bindMethods(readings.piece())
          .execute();
      for (int at = 0; at < readings.values().size(); at++) {
        handle
            .createUpdate(
                "INSERT INTO calibration_reading (calibration_id, piece, place, kind, value)"
                    + " VALUES (:id, :piece, :place, :kind, :value)")
            .bind("id", id)
            .bind("piece", place)
            .bind("place", at)
            .bind("kind", readings.kind().word())
            .bind("value", readings.values().get(at))
            .execute();
      }
    }
  }

  private Calibration withPieces(Calibration bare) {
    List<PieceReadings> pieces =
        handle
            .createQuery(
                "SELECT * FROM calibration_piece WHERE calibration_id = :id ORDER BY place")
            .bind("id", bare.id())
            .map((row, context) -> new Placed(row.getInt("place"), piece(row)))
            .list()
            .stream()
            .map(placed -> readings(bare.id(), placed))
            .toList();
    return new Calibration(
        bare.id(),
        bare.subject(),
        bare.before(),
        bare.found(),
        pieces,
        bare.temperature(),
        bare.doubts(),
        bare.word());
  }

  private record Placed(int place, ReferencePiece piece) {}

  private record Reading(String kind, double value) {}

  private PieceReadings readings(long id, Placed placed) {
    List<Reading> readings =
        handle
            .createQuery(
                "SELECT kind, value FROM calibration_reading"
                    + " WHERE calibration_id = :id AND piece = :piece ORDER BY place")
            .bind("id", id)
            .bind("piece", placed.place)
            .map((row, context) -> new Reading(row.getString("kind"), row.getDouble("value")))
            .list();
    return new PieceReadings(
        placed.piece,
        PieceReadings.Kind.fromWord(readings.get(0).kind),
        readings.stream().map(Reading::value).toList());
  }

  private static ReferencePiece piece(ResultSet row) throws SQLException {
    return new ReferencePiece(
        row.getString("name"),
        row.getDouble("thickness_um"),
        row.getDouble("expanded_um"),
        row.getDouble("k"),
        row.getString("material"),
        row.getString("how_known"));
  }

  private static Calibration calibration(ResultSet row) throws SQLException {
    String doubts = row.getString("warnings");
    return new Calibration(
        row.getLong("id"),
        new Subject(
            row.getString("gauge"),
            row.getString("structure"),
            row.getString("layer"),
            row.getString("resin")),
        new Velocity(row.getDouble("velocity_before_mps"), row.getDouble("offset_before_ns")),
        found(row),
        List.of(),
        temperature(row),
        doubts.isEmpty() ? List.of() : doubts.lines().toList(),
        new Word(
            row.getString("author"),
            row.getString("reason"),
            Times.toInstant(row.getLong("done_at"))));
  }

  private static FittedVelocity found(ResultSet row) throws SQLException {
    double chiSquare = row.getDouble("chi_square");
    OptionalDouble misfit = row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(chiSquare);
    return new FittedVelocity(
        new Velocity(row.getDouble("velocity_mps"), row.getDouble("offset_ns")),
        row.getDouble("u_velocity_mps"),
        row.getDouble("u_offset_ns"),
        row.getDouble("covariance"),
        misfit,
        row.getInt("degrees"));
  }

  private static Optional<TemperatureModel> temperature(ResultSet row) throws SQLException {
    double celsius = row.getDouble("temperature_c");
    return row.wasNull()
        ? Optional.empty()
        : Optional.of(new TemperatureModel(celsius, row.getDouble("percent_per_kelvin")));
  }

  private static @Nullable Double orNull(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : null;
  }
}
