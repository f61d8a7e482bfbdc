package dev.filmward.store;

import dev.filmward.alarm.AlarmState;
import dev.filmward.alarm.Finding;
import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** How many alarms stand where, counted by one query. */
public final class AlarmTally {
  private final Handle handle;

  AlarmTally(Handle handle) {
    this.handle = handle;
  }

  /**
   * Alarms of one state.
   *
   * @param oldest when the first of them was shown to people, or opened where it never was
   */
  public record Standing(AlarmState state, long alarms, Instant oldest) {}

  /** Of those that are not closed; a state without alarms is left out. */
  public List<Standing> standings() {
    return handle
        .createQuery(
            "SELECT state, count(*) AS alarms, min(coalesce(shown_at, opened_at)) AS oldest"
                + " FROM alarm WHERE "
                + AlarmTable.NOT_CLOSED
                + " GROUP BY state")
        .bind("notFoundYet", Finding.NOT_FOUND_YET)
        .map(
            (row, context) ->
                new Standing(
                    AlarmState.fromWord(row.getString("state")),
                    row.getLong("alarms"),
                    Times.toInstant(row.getLong("oldest"))))
        .list();
  }
}
