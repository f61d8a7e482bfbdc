package dev.filmward.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/**
 * Takes the readings of old samples away and leaves their figures, signals, limits and alarms. The
 * newest samples of a production always keep theirs, because the board shows them.
 */
public final class ThinningTable {
  private static final String OLD_WITH_READINGS =
      " WHERE production_id = "
          + BlockTable.PRODUCTION
          + " AND um <> '[]' AND taken_at >= :fromAt AND (taken_at, id) > (:fromAt, :fromId)";

  private final Handle handle;

  ThinningTable(Handle handle) {
    this.handle = handle;
  }

  /** A place in the order of time, after which a run of samples begins. */
  public record Place(long takenAtMicros, long sampleId) {
    public static final Place BEGINNING = new Place(Long.MIN_VALUE, 0);
  }

  /**
   * Which samples.
   *
   * @param before taken before this
   * @param newestKept so many newest samples keep their readings whatever their age
   * @param most samples at once
   */
  public record Rule(Instant before, int newestKept, int most) {}

  /** Samples that follow on one another and have readings. */
  public record Run(Place last, long samples, long readings, Instant from, Instant to) {}

  private record Old(Place place, int readings) {}

  /** The next samples of a production that the rule lets go. */
  public Optional<Run> next(SampleTable.Production made, Place after, Rule rule) {
    List<Old> old =
        handle
            .createQuery(
                "SELECT id, taken_at, um FROM sample"
                    + OLD_WITH_READINGS
                    + " AND taken_at < :before AND taken_at < (SELECT min(taken_at) FROM"
                    + " (SELECT taken_at FROM sample WHERE production_id = "
                    + BlockTable.PRODUCTION
                    + " ORDER BY taken_at DESC LIMIT :kept) newest)"
                    + " ORDER BY taken_at, id LIMIT :most")
            .bind("line", made.line())
            .bind("structure", made.structure())
            .bind("fromAt", after.takenAtMicros)
            .bind("fromId", after.sampleId)
            .bind("before", Times.toMicros(rule.before))
            .bind("kept", rule.newestKept)
            .bind("most", rule.most)
            .map(
                (row, context) ->
                    new Old(
                        new Place(row.getLong("taken_at"), row.getLong("id")),
                        ReadingArray.measured(row.getString("um"))))
            .list();
    return old.isEmpty() ? Optional.empty() : Optional.of(run(old));
  }

  private static Run run(List<Old> old) {
    Place last = old.get(old.size() - 1).place;
    return new Run(
        last,
        old.size(),
        old.stream().mapToLong(Old::readings).sum(),
        Times.toInstant(old.get(0).place.takenAtMicros),
        Times.toInstant(last.takenAtMicros));
  }

  /** Takes the readings away of what {@link #next} gave in this transaction. */
  public void thin(SampleTable.Production made, Place after, Run run, Instant now) {
    handle
        .createUpdate(
            "UPDATE sample SET um = '[]', thinned_at = :now"
                + OLD_WITH_READINGS
                + " AND taken_at <= :toAt AND (taken_at, id) <= (:toAt, :toId)")
        .bind("now", Times.toMicros(now))
        .bind("line", made.line())
        .bind("structure", made.structure())
        .bind("fromAt", after.takenAtMicros)
        .bind("fromId", after.sampleId)
        .bind("toAt", run.last.takenAtMicros)
        .bind("toId", run.last.sampleId)
        .execute();
  }
}
