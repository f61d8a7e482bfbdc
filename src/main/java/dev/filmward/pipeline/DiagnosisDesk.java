package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.diagnosis.Boundary;
import dev.filmward.diagnosis.HitRate;
import dev.filmward.diagnosis.LineEntry;
import dev.filmward.diagnosis.LineEntry.Note;
import dev.filmward.diagnosis.Revision;
import dev.filmward.diagnosis.Signatures;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.CauseBook.Change;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.Store;
import dev.filmward.store.Tables;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What changed and why: diagnoses of alarms, the signatures that they look for, and what people
 * wrote down of the line. Thread-safe; each change is one transaction with its entry in the audit
 * chain.
 */
public final class DiagnosisDesk {
  private final Store store;
  private final Clock clock;
  private final ZoneId zone;
  private final Function<String, Optional<Structure>> structures;

  DiagnosisDesk(Plant plant) {
    this.store = plant.store();
    this.clock = plant.clock();
    this.zone = plant.zone();
    this.structures = code -> plant.structures().find(code);
  }

  /**
   * Diagnoses an alarm from what is known by now.
   *
   * @throws NoSuchElementException if there is no such alarm, or its structure is not known
   */
  public Explained of(long alarmId) {
    return store.read(
        tables -> {
          Alarm alarm =
              tables
                  .alarms()
                  .find(alarmId)
                  .orElseThrow(() -> new NoSuchElementException("no alarm " + alarmId));
          return of(tables, alarm)
              .orElseThrow(
                  () ->
                      new NoSuchElementException(
                          "no structure \"" + alarm.subject().structure() + "\""));
        });
  }

  /** Empty where its structure is not known. */
  Optional<Explained> of(Tables tables, Alarm alarm) {
    return structures
        .apply(alarm.subject().structure())
        .map(structure -> new DiagnosisReader(tables, zone).of(alarm, structure));
  }

  /** How often the true cause was named, as people marked it. */
  public HitRate hitRate() {
    return store.read(tables -> HitRate.of(tables.outcomes().newest()));
  }

  /**
   * Puts signatures in the place of those before.
   *
   * @throws IllegalStateException if somebody else did so in the meantime
   */
  public Revision keep(Signatures signatures, Change change) {
    return store.write(
        tables -> {
          Revision revision = CauseBook.next(tables.signatures().newest(), change, clock.instant());
          tables.signatures().add(revision, signatures);
          tables
              .audit()
              .add(
                  new AuditEntry(
                      revision.at(),
                      revision.author(),
                      "signatures",
                      "version " + revision.version(),
                      revision.reason() + "\n" + words(signatures)));
          return revision;
        });
  }

  private static String words(Signatures signatures) {
    return signatures.all().stream()
        .map(
            signature ->
                signature.code()
                    + ": "
                    + signature.conditions().stream()
                        .map(condition -> condition.words() + " (" + condition.weight() + ")")
                        .collect(Collectors.joining(", ")))
        .collect(Collectors.joining("\n"));
  }

  /** What happened at a line in a span, as people wrote it down. */
  public List<LineEntry> log(String line, Span span) {
    return store.read(
        tables -> {
          LineDesk.requireLine(tables, line);
          return tables.lineLog().within(line, span);
        });
  }

  /**
   * Writes down what happened at a line.
   *
   * @throws NoSuchElementException if nothing has come from that line yet
   */
  public LineEntry write(String line, Boundary what, String by) {
    LineEntry entry = LineEntry.written(line, what, by, clock.instant());
    long id =
        store.write(
            tables -> {
              LineDesk.requireLine(tables, line);
              tables.audit().add(audited(entry, entry.written(), "written down"));
              return tables.lineLog().add(entry);
            });
    return new LineEntry(id, line, what, entry.written(), Optional.empty());
  }

  /**
   * Withdraws an entry that was wrong; it stays readable.
   *
   * @throws NoSuchElementException if there is no such entry
   * @throws IllegalStateException if it was withdrawn before
   */
  public void withdraw(long id, String by, String why) {
    Note note = new Note(by, why, clock.instant());
    store.change(
        tables -> {
          LineEntry entry =
              tables
                  .lineLog()
                  .find(id)
                  .orElseThrow(() -> new NoSuchElementException("no entry " + id));
          if (entry.withdrawn().isPresent()) {
            throw new IllegalStateException(
                entry.withdrawn().get().by() + " has withdrawn it before");
          }
          LineEntry withdrawn =
              new LineEntry(id, entry.line(), entry.what(), entry.written(), Optional.of(note));
          tables.lineLog().withdraw(id, note);
          tables.audit().add(audited(withdrawn, note, "withdrawn: " + why));
        });
  }

  private static AuditEntry audited(LineEntry entry, Note note, String what) {
    Boundary happened = entry.what();
    return new AuditEntry(
        note.at(),
        note.by(),
        "line log",
        entry.line() + ", " + happened.kind().words() + " at " + happened.at(),
        what + (happened.words().isBlank() ? "" : "; " + happened.words()));
  }
}
