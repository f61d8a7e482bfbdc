package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.CareFigures;
import dev.filmward.alarm.CareRecord;
import dev.filmward.alarm.CodedFinding;
import dev.filmward.alarm.Comment;
import dev.filmward.alarm.DoneCheck;
import dev.filmward.alarm.OwnerChangedException;
import dev.filmward.alarm.Ownership;
import dev.filmward.diagnosis.CheckPlan;
import dev.filmward.diagnosis.HitRate;
import dev.filmward.diagnosis.NamedCause;
import dev.filmward.diagnosis.Pattern;
import dev.filmward.film.Structures;
import dev.filmward.store.AlarmTable.HistoryEntry;
import dev.filmward.store.Store;
import dev.filmward.store.Tables;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * What people do about an alarm after they took it. Each act is one transaction, with its line in
 * the alarm's history and in the audit chain. Thread-safe.
 *
 * <p>Every act throws {@link NoSuchElementException} where there is no such alarm.
 */
public final class AlarmDesk {
  private final Store store;
  private final Clock clock;
  private final Supplier<Structures> structures;
  private final DiagnosisDesk diagnoses;
  private final AlarmNews.Source news;
  private final Consumer<PlantEvent> listener;

  AlarmDesk(Plant plant, AlarmNews.Source news, Consumer<PlantEvent> listener) {
    this.store = plant.store();
    this.clock = plant.clock();
    this.structures = plant::structures;
    this.diagnoses = plant.diagnoses();
    this.news = news;
    this.listener = listener;
  }

  /** An alarm after an act, and what its history says. */
  private record Act(Alarm alarm, HistoryEntry entry) {}

  /**
   * Notes cause and action; a later finding takes the place of an earlier one, which stays in the
   * history.
   *
   * @throws IllegalArgumentException if there is no such cause to choose from
   */
  public Alarm explain(long alarmId, Explanation given) {
    return act(
        alarmId,
        (tables, alarm) -> {
          CodedFinding found =
              CauseNaming.finding(
                  tables.causes().current(), current(tables, alarm), given, clock.instant());
          tables.care().add(alarmId, found);
          noteOutcome(tables, alarm, found);
          return new Act(
              alarm.explain(found.finding()), entry(given.by(), CauseNaming.words(found)));
        });
  }

  /** Keeps what the diagnosis names now beside the true cause, so that it can be judged by it. */
  private void noteOutcome(Tables tables, Alarm alarm, CodedFinding found) {
    if (HitRate.isAnswer(found.code())) {
      diagnoses
          .of(tables, alarm)
          .map(explained -> NamedCause.of(found.code(), explained.diagnosis()))
          .ifPresent(outcome -> tables.outcomes().add(alarm.id(), clock.instant(), outcome));
    }
  }

  /** Adds a comment; none is ever changed or lost. */
  public Alarm comment(long alarmId, String by, String words) {
    return act(
        alarmId,
        (tables, alarm) -> {
          tables.care().add(alarmId, new Comment(words, by, clock.instant()));
          return new Act(alarm, entry(by, "comment: " + words));
        });
  }

  /**
   * Hands an alarm on to another person.
   *
   * @throws OwnerChangedException if it is not with the person with whom it was believed to be
   * @throws IllegalStateException if it is with the new person already
   */
  public Alarm handOn(long alarmId, HandingOn handover) {
    return act(
        alarmId,
        (tables, alarm) -> {
          Optional<Ownership> now = owner(tables, alarm);
          String owner = now.map(Ownership::owner).orElse("");
          if (!owner.equals(handover.from())) {
            throw new OwnerChangedException(now);
          }
          if (owner.equals(handover.to())) {
            throw new IllegalStateException(owner + " has this alarm already");
          }
          Ownership next =
              new Ownership(handover.to(), handover.why(), handover.by(), clock.instant());
          tables.care().add(alarmId, next);
          return new Act(alarm, entry(handover.by(), words(handover)));
        });
  }

  /**
   * Opens a closed alarm again; what was found goes to its history.
   *
   * @throws IllegalStateException if it is open
   */
  public Alarm reopen(long alarmId, String by, String reason) {
    return act(
        alarmId,
        (tables, alarm) -> {
          String before =
              current(tables, alarm)
                  .map(found -> "; before, " + CauseNaming.words(found))
                  .orElse("");
          return new Act(alarm.reopen(), entry(by, "reopened: " + reason + before));
        });
  }

  /**
   * Notes that a check of the plan was done. It may be done again; each time stays.
   *
   * @throws IllegalArgumentException if the plan has no such check for the alarm
   */
  public Alarm check(long alarmId, DoneCheck done) {
    return act(
        alarmId,
        (tables, alarm) -> {
          if (!isPlanned(tables.checks().current(), alarm, done.words())) {
            throw new IllegalArgumentException(
                "the plan has no check \"" + done.words() + "\" for this alarm any more");
          }
          tables.care().add(alarmId, done);
          String note = done.note().isBlank() ? "" : ": " + done.note();
          String what = "check \"" + done.words() + "\": " + done.outcome().words() + note;
          return new Act(alarm, entry(done.by(), what));
        });
  }

  /** How alarms that opened at a moment or later were cared for. */
  public CareFigures figures(Instant since) {
    List<CareRecord> records =
        store.read(
            tables ->
                tables.alarms().openedSince(since.minus(CareFigures.AGAIN)).stream()
                    .map(alarm -> CareRecord.of(alarm, tables.care().findings(alarm.id())))
                    .toList());
    return CareFigures.of(records, since);
  }

  /** With whom an alarm is. */
  public static Optional<Ownership> owner(Tables tables, Alarm alarm) {
    return Ownership.of(alarm, tables.care().handedOn(alarm.id()));
  }

  /** What is found about an alarm, with its code; empty where nothing is, or it was reopened. */
  public static Optional<CodedFinding> current(Tables tables, Alarm alarm) {
    List<CodedFinding> all = tables.care().findings(alarm.id());
    return alarm.finding().isEmpty() || all.isEmpty()
        ? Optional.empty()
        : Optional.of(all.get(all.size() - 1));
  }

  private boolean isPlanned(CheckPlan plan, Alarm alarm, String check) {
    Optional<Pattern> pattern =
        structures.get().find(alarm.subject().structure()).map(alarm.subject()::pattern);
    return plan.asksFor(check, pattern.orElse(Pattern.ALL_LAYERS));
  }

  private static String words(HandingOn handover) {
    String why = handover.why().isBlank() ? "" : ": " + handover.why();
    String from = handover.from().isEmpty() ? "" : ", before with " + handover.from();
    return "handed on to " + handover.to() + from + why;
  }

  private HistoryEntry entry(String by, String what) {
    return new HistoryEntry(clock.instant(), by, what);
  }

  private Alarm act(long alarmId, BiFunction<Tables, Alarm, Act> step) {
    Alarm changed =
        store.write(
            tables -> {
              Alarm alarm =
                  tables
                      .alarms()
                      .find(alarmId)
                      .orElseThrow(() -> new NoSuchElementException("no alarm " + alarmId));
              Act act = step.apply(tables, alarm);
              Alarm kept = tables.alarms().save(act.alarm());
              tables.alarms().note(alarmId, act.entry());
              AlarmNews told = news.begin(tables);
              told.changed(Optional.of(alarm), kept);
              told.write();
              tables.audit().add(Audited.alarm(kept, act.entry()));
              return kept;
            });
    listener.accept(
        new PlantEvent.AlarmChanged(alarmId, changed.subject().line(), changed.state().word()));
    return changed;
  }
}
