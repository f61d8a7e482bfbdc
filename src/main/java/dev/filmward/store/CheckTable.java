package dev.filmward.store;

import dev.filmward.gauge.calibration.CheckReading;
import dev.filmward.gauge.calibration.CheckStandard;
import dev.filmward.gauge.calibration.ReferencePiece;
import dev.filmward.gauge.calibration.Scaling.Word;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jspecify.annotations.Nullable;

/** Check standards, what gauges showed on them, and what was decided; rows are only added. */
public final class CheckTable {
  private final Handle handle;

  CheckTable(Handle handle) {
    this.handle = handle;
  }

  /** What becomes of the samples that a failed check made doubtful: keep or leave-out. */
  public record Verdict(String verdict, Word word) {}

  public List<CheckStandard> standards() {
    return standards(handle.createQuery("SELECT * FROM check_standard ORDER BY gauge, name, id"));
  }

  public Optional<CheckStandard> standard(long id) {
    String sql = "SELECT * FROM check_standard WHERE id = :id";
    return standards(handle.createQuery(sql).bind("id", id)).stream().findFirst();
  }

  private static List<CheckStandard> standards(Query query) {
    return query.map((row, context) -> standard(row)).list();
  }

  public void add(CheckStandard standard) {
    handle
        .createUpdate(
            "INSERT INTO check_standard (gauge, name, thickness_um, expanded_um, k, sigma_um,"
                + " material, how_known, author, reason, decided_at) VALUES (:gauge, :name,"
                + " :thicknessUm, :expandedUm, :k, :sigma, :material, :howKnown, :by, :reason,"
                + " :at)")
        .bind("gauge", standard.gauge())
        .bindMethods(standard.film())
        .bind("sigma", orNull(standard.sigmaUm()))
        .bind("by", standard.word().by())
        .bind("reason", standard.word().reason())
        .bind("at", Times.toMicros(standard.word().at()))
        .execute();
  }

  /** What was shown on a standard, in the order of time. */
  public List<CheckReading> readings(long standardId) {
    return readings(
        handle
            .createQuery("SELECT * FROM check_reading WHERE standard_id = :id ORDER BY at, id")
            .bind("id", standardId));
  }

  /** What was shown on all standards in a span of time; its end does not count. */
  public List<CheckReading> between(Instant from, Instant to) {
    return readings(
        handle
            .createQuery(
                "SELECT * FROM check_reading WHERE at >= :from AND at < :to ORDER BY at, id")
            .bind("from", Times.toMicros(from))
            .bind("to", Times.toMicros(to)));
  }

  private static List<CheckReading> readings(Query query) {
    return query
        .map(
            (row, context) ->
                new CheckReading(
                    row.getLong("id"),
                    row.getLong("standard_id"),
                    Times.toInstant(row.getLong("at")),
                    row.getDouble("um"),
                    row.getString("author"),
                    row.getString("note")))
        .list();
  }

  public void add(CheckReading reading, Instant writtenAt) {
    handle
        .createUpdate(
            "INSERT INTO check_reading (standard_id, at, um, author, note, written_at)"
                + " VALUES (:standardId, :takenAt, :um, :by, :note, :writtenAt)")
        .bind("standardId", reading.standardId())
        .bind("takenAt", Times.toMicros(reading.at()))
        .bind("um", reading.um())
        .bind("by", reading.by())
        .bind("note", reading.note())
        .bind("writtenAt", Times.toMicros(writtenAt))
        .execute();
  }

  /** The last verdict by the failed reading that it is about. */
  public Map<Long, Verdict> verdicts() {
    Map<Long, Verdict> verdicts = new TreeMap<>();
    handle
        .createQuery("SELECT * FROM check_decision ORDER BY id")
        .map(
            (row, context) ->
                Optional.ofNullable(
                    verdicts.put(
                        row.getLong("reading_id"),
                        new Verdict(row.getString("verdict"), word(row)))))
        .list();
    return verdicts;
  }

  public void decide(long readingId, Verdict verdict) {
    handle
        .createUpdate(
            "INSERT INTO check_decision (reading_id, verdict, author, reason, decided_at)"
                + " VALUES (:id, :verdict, :by, :reason, :at)")
        .bind("id", readingId)
        .bind("verdict", verdict.verdict())
        .bind("by", verdict.word().by())
        .bind("reason", verdict.word().reason())
        .bind("at", Times.toMicros(verdict.word().at()))
        .execute();
  }

  /** How many samples of a line were taken after a moment and before another. */
  public long samples(String line, Instant after, Instant before) {
    return handle
        .createQuery(
            "SELECT count(*) FROM sample s JOIN production p ON p.id = s.production_id"
                + " WHERE p.line = :line AND s.taken_at > :after AND s.taken_at < :before")
        .bind("line", line)
        .bind("after", Times.toMicros(after))
        .bind("before", Times.toMicros(before))
        .mapTo(Long.class)
        .one();
  }

  private static CheckStandard standard(ResultSet row) throws SQLException {
    double sigma = row.getDouble("sigma_um");
    OptionalDouble sigmaUm = row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(sigma);
    ReferencePiece film =
        new ReferencePiece(
            row.getString("name"),
            row.getDouble("thickness_um"),
            row.getDouble("expanded_um"),
            row.getDouble("k"),
            row.getString("material"),
            row.getString("how_known"));
    return new CheckStandard(row.getLong("id"), row.getString("gauge"), film, sigmaUm, word(row));
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
