package dev.filmward.store;

import dev.filmward.diagnosis.NamedCause;
import dev.filmward.diagnosis.NamedCause.Named;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;

/** What diagnoses named when the true cause was said; rows are only added. */
public final class OutcomeTable {
  private final Handle handle;

  OutcomeTable(Handle handle) {
    this.handle = handle;
  }

  public void add(long alarmId, Instant at, NamedCause outcome) {
    handle
        .createUpdate(
            "INSERT INTO diagnosis_outcome (alarm_id, at, cause, named)"
                + " VALUES (:alarm, :at, :cause, :named)")
        .bind("alarm", alarmId)
        .bind("at", Times.toMicros(at))
        .bind("cause", outcome.cause())
        .bind("named", named(outcome))
        .execute();
  }

  /** What holds of each alarm that has any. */
  public List<NamedCause> newest() {
    return handle
        .createQuery(
            "SELECT cause, named FROM diagnosis_outcome WHERE id IN"
                + " (SELECT max(id) FROM diagnosis_outcome GROUP BY alarm_id) ORDER BY id")
        .map(
            (row, context) ->
                new NamedCause(
                    row.getString("cause"),
                    row.getString("named").lines().map(OutcomeTable::named).toList()))
        .list();
  }

  private static String named(NamedCause outcome) {
    return outcome.named().stream()
        .map(
            named ->
                Stream.concat(Stream.of(named.signature()), named.causes().stream())
                    .collect(Collectors.joining(" ")))
        .collect(Collectors.joining("\n"));
  }

  private static Named named(String line) {
    List<String> words = Arrays.asList(line.split(" "));
    return new Named(words.get(0), words.subList(1, words.size()));
  }
}
