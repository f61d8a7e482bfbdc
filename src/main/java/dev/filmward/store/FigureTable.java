package dev.filmward.store;

import dev.filmward.film.SampleKey;
import dev.filmward.subgroup.Subgroup;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;

/** Subgroup figures of one characteristic, in the order of time, then roll, then sample. */
public final class FigureTable {
  private static final String SELECT =
      "SELECT s.id, s.line, s.structure, s.roll, s.sample, s.taken_at, s.file_id,"
          + " g.size, g.mean, g.least, g.greatest, g.squares"
          + " FROM sample s JOIN subgroup g ON g.sample_id = s.id AND g.position = :position"
          + " WHERE s.line = :line AND s.structure = :structure";
  private static final String FORWARD = " ORDER BY s.taken_at, s.roll, s.sample";
  private static final String BACKWARD = " ORDER BY s.taken_at DESC, s.roll DESC, s.sample DESC";

  private final Handle handle;

  FigureTable(Handle handle) {
    this.handle = handle;
  }

  /**
   * One characteristic of what a line makes.
   *
   * @param position 0 for the total
   */
  public record Series(String line, String structure, int position) {}

  /** A closed span of time. */
  public record Span(Instant from, Instant to) {
    private static final Instant FIRST = Instant.parse("-100000-01-01T00:00:00Z");
    private static final Instant LAST = Instant.parse("+100000-01-01T00:00:00Z");

    /** From a moment on, without an end. */
    public static Span since(Instant from) {
      return new Span(from, LAST);
    }

    public static Span always() {
      return new Span(FIRST, LAST);
    }
  }

  public List<FigureRow> within(Series series, Span span) {
    return query(series, " AND s.taken_at BETWEEN :from AND :to" + FORWARD)
        .bind("from", Times.toMicros(span.from()))
        .bind("to", Times.toMicros(span.to()))
        .map((row, context) -> figures(row))
        .list();
  }

  /** The first subgroups that have a reading. */
  public List<FigureRow> first(Series series, int most) {
    return query(series, " AND g.size > 0" + FORWARD + " LIMIT :most")
        .bind("most", most)
        .map((row, context) -> figures(row))
        .list();
  }

  /** The last samples, measured or not, oldest first. */
  public List<FigureRow> last(Series series, int most) {
    return reversed(
        query(series, BACKWARD + " LIMIT :most")
            .bind("most", most)
            .map((row, context) -> figures(row))
            .list());
  }

  /** The last subgroups that have a reading and were taken before a moment, oldest first. */
  public List<FigureRow> before(Series series, Instant moment, int most) {
    return reversed(
        query(series, " AND g.size > 0 AND s.taken_at < :moment" + BACKWARD + " LIMIT :most")
            .bind("moment", Times.toMicros(moment))
            .bind("most", most)
            .map((row, context) -> figures(row))
            .list());
  }

  private Query query(Series series, String rest) {
    return handle.createQuery(SELECT + rest).bindMethods(series);
  }

  private static List<FigureRow> reversed(List<FigureRow> rows) {
    List<FigureRow> forward = new ArrayList<>(rows);
    Collections.reverse(forward);
    return forward;
  }

  private static FigureRow figures(ResultSet row) throws SQLException {
    int size = row.getInt("size");
    Optional<Subgroup> subgroup =
        size == 0
            ? Optional.empty()
            : Optional.of(
                new Subgroup(
                    size,
                    row.getDouble("mean"),
                    row.getDouble("least"),
                    row.getDouble("greatest"),
                    row.getDouble("squares")));
    SampleKey key =
        new SampleKey(
            row.getString("line"),
            row.getString("structure"),
            row.getString("roll"),
            row.getString("sample"));
    return new FigureRow(
        row.getLong("id"),
        key,
        Times.toInstant(row.getLong("taken_at")),
        row.getLong("file_id"),
        subgroup);
  }
}
