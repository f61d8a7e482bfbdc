package dev.filmward.store;

import dev.filmward.alarm.Deviation;
import dev.filmward.alarm.Hold;
import dev.filmward.alarm.HoldScope;
import dev.filmward.chart.LimitsVersion.Decision;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;

/** Which alarms people hold back, and until when. */
public final class HoldTable {
  private final Handle handle;

  HoldTable(Handle handle) {
    this.handle = handle;
  }

  /** A hold and how it ended, where it did. */
  public record Kept(Hold hold, Optional<Decision> end) {}

  /** Keeps a new one and gives it an id. */
  public Hold add(Hold hold) {
    HoldScope scope = hold.scope();
    long id =
        handle
            .createUpdate(
                "INSERT INTO hold (kind, line, structure, positions, deviation, held_from,"
                    + " until_at, author, reason) VALUES (:kind, :line, :structure, :positions,"
                    + " :deviation, :from, :until, :author, :reason)")
            .bind("kind", hold.kind().name())
            .bind("line", scope.line())
            .bind("structure", scope.structure().orElse(null))
            .bind("positions", words(scope.positions()))
            .bind("deviation", scope.deviation().map(Deviation::name).orElse(null))
            .bind("from", Times.toMicros(hold.decision().at()))
            .bind("until", hold.until().map(Times::toMicros).orElse(null))
            .bind("author", hold.decision().author())
            .bind("reason", hold.decision().reason())
            .executeAndReturnGeneratedKeys("id")
            .mapTo(Long.class)
            .one();
    return hold.withId(id);
  }

  public Optional<Kept> find(long id) {
    return list(handle.createQuery("SELECT * FROM hold WHERE id = :id").bind("id", id)).stream()
        .findFirst();
  }

  /** Those that nobody and nothing has ended, oldest first. */
  public List<Hold> goingOn() {
    return list(handle.createQuery("SELECT * FROM hold WHERE ended_at IS NULL ORDER BY id"))
        .stream()
        .map(Kept::hold)
        .toList();
  }

  /** Newest first. */
  public List<Kept> newest(int most) {
    return list(
        handle.createQuery("SELECT * FROM hold ORDER BY id DESC LIMIT :most").bind("most", most));
  }

  /** Ends one that goes on. */
  public void end(long id, Decision end) {
    handle
        .createUpdate(
            "UPDATE hold SET ended_at = :at, ended_by = :by, end_reason = :reason"
                + " WHERE id = :id AND ended_at IS NULL")
        .bind("id", id)
        .bind("at", Times.toMicros(end.at()))
        .bind("by", end.author())
        .bind("reason", end.reason())
        .execute();
  }

  private static List<Kept> list(Query query) {
    return query.map((row, context) -> new Kept(hold(row), end(row))).list();
  }

  private static Hold hold(ResultSet row) throws SQLException {
    long until = row.getLong("until_at");
    Optional<Instant> end = row.wasNull() ? Optional.empty() : Optional.of(Times.toInstant(until));
    return new Hold(
        row.getLong("id"),
        Hold.Kind.valueOf(row.getString("kind")),
        new HoldScope(
            row.getString("line"),
            Optional.ofNullable(row.getString("structure")),
            positions(row.getString("positions")),
            Optional.ofNullable(row.getString("deviation")).map(Deviation::valueOf)),
        end,
        new Decision(
            row.getString("author"),
            row.getString("reason"),
            Times.toInstant(row.getLong("held_from"))));
  }

  private static Optional<Decision> end(ResultSet row) throws SQLException {
    String by = row.getString("ended_by");
    return by == null
        ? Optional.empty()
        : Optional.of(
            new Decision(
                by, row.getString("end_reason"), Times.toInstant(row.getLong("ended_at"))));
  }

  private static String words(Set<Integer> positions) {
    return positions.stream().sorted().map(String::valueOf).collect(Collectors.joining(" "));
  }

  private static Set<Integer> positions(String words) {
    return words.isEmpty()
        ? Set.of()
        : Arrays.stream(words.split(" ", -1)).map(Integer::valueOf).collect(Collectors.toSet());
  }
}
