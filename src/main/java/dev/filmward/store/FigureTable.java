package dev.filmward.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.function.Predicate;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;

/**
 * Subgroup figures of one characteristic, in the order of time, then roll, then sample. They are
 * read a block of samples at a time.
 */
public final class FigureTable {
  private static final String SELECT =
      "SELECT b.keys, f.figures FROM block b"
          + " JOIN block_figures f ON f.block_id = b.id AND f.position = :position"
          + " WHERE b.production_id = "
          + BlockTable.PRODUCTION;
  private static final String FORWARD = " ORDER BY b.first_at, b.first_roll, b.first_sample";
  private static final String BACKWARD =
      " ORDER BY b.first_at DESC, b.first_roll DESC, b.first_sample DESC";
  private static final String PAGE = " LIMIT :onPage OFFSET :offset";

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
    return columns(series, span).rows();
  }

  /** As {@link #within}, for many points of which few are looked at closely. */
  public FigureColumns columns(Series series, Span span) {
    long from = Times.toMicros(span.from());
    long to = Times.toMicros(span.to());
    FigureColumns columns = new FigureColumns(series);
    List<Block> blocks =
        query(series, BlockTable.WITHIN + FORWARD)
            .bind("from", from)
            .bind("to", to)
            .map((row, context) -> new Block(row))
            .list();
    for (Block block : blocks) {
      for (int place = 0; place < block.keys.count(); place++) {
        long takenAt = block.keys.takenAt(place);
        if (from <= takenAt && takenAt <= to) {
          columns.add(block.keys, block.figures, place);
        }
      }
    }
    return columns;
  }

  /** The first subgroups that have a reading. */
  public List<FigureRow> first(Series series, int most) {
    FigureColumns columns = new FigureColumns(series);
    forEachBlock(
        query(series, FORWARD + PAGE),
        most,
        block -> {
          for (int place = 0; place < block.keys.count() && columns.count() < most; place++) {
            if (block.figures.size(place) > 0) {
              columns.add(block.keys, block.figures, place);
            }
          }
          return columns.count() < most;
        });
    return columns.rows();
  }

  /** The last samples, measured or not, oldest first. */
  public List<FigureRow> last(Series series, int most) {
    return backward(series, query(series, BACKWARD + PAGE), most, (block, place) -> true);
  }

  /** The last subgroups that have a reading and were taken before a moment, oldest first. */
  public List<FigureRow> before(Series series, Instant moment, int most) {
    long micros = Times.toMicros(moment);
    Query blocks =
        query(series, " AND b.first_at < :moment" + BACKWARD + PAGE).bind("moment", micros);
    return backward(
        series,
        blocks,
        most,
        (block, place) -> block.figures.size(place) > 0 && block.keys.takenAt(place) < micros);
  }

  private static final class Block {
    private final BlockKeys keys;
    private final BlockFigures figures;

    private Block(ResultSet row) throws SQLException {
      keys = new BlockKeys(row.getBytes("keys"));
      figures = new BlockFigures(row.getBytes("figures"));
    }
  }

  /** Says whether the point at a place of a block is wanted. */
  private interface Wanted {
    boolean test(Block block, int place);
  }

  private static List<FigureRow> backward(Series series, Query query, int most, Wanted wanted) {
    FigureColumns columns = new FigureColumns(series);
    forEachBlock(
        query,
        most,
        block -> {
          for (int place = block.keys.count() - 1; place >= 0 && columns.count() < most; place--) {
            if (wanted.test(block, place)) {
              columns.add(block.keys, block.figures, place);
            }
          }
          return columns.count() < most;
        });
    columns.reverse();
    return columns.rows();
  }

  /** Hands on blocks until one answers that it was enough, a page of them at a time. */
  private static void forEachBlock(Query paged, int most, Predicate<Block> goOn) {
    int onPage = most / BlockTable.USUAL_SAMPLES + 2;
    boolean more = most > 0;
    for (int offset = 0; more; offset += onPage) {
      List<Block> blocks =
          paged
              .bind("onPage", onPage)
              .bind("offset", offset)
              .map((row, context) -> new Block(row))
              .list();
      more = blocks.size() == onPage;
      for (Block block : blocks) {
        if (!goOn.test(block)) {
          return;
        }
      }
    }
  }

  private Query query(Series series, String rest) {
    return handle.createQuery(SELECT + rest).bindMethods(series);
  }
}
