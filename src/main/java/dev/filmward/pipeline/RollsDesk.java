package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.Disposition;
import dev.filmward.alarm.RollKey;
import dev.filmward.alarm.RollState;
import dev.filmward.diagnosis.Revision;
import dev.filmward.store.AlarmTable.HistoryEntry;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.Store;
import dev.filmward.store.Tables;
import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/**
 * What becomes of rolls. Decisions are versions; a person decides about what that person saw, and
 * is told where somebody else decided in between. Thread-safe.
 */
public final class RollsDesk {
  private final Store store;
  private final Clock clock;
  private final StructureBook structures;
  private final Consumer<PlantEvent> listener;

  RollsDesk(Store store, Clock clock, StructureBook structures, Consumer<PlantEvent> listener) {
    this.store = store;
    this.clock = clock;
    this.structures = structures;
    this.listener = listener;
  }

  /**
   * The rolls made since the last good sample before an alarm.
   *
   * @throws NoSuchElementException if there is no such alarm, or its structure is not known
   */
  public SuspectRolls suspect(long alarmId) {
    return store.read(
        tables -> {
          Alarm alarm = alarm(tables, alarmId);
          String code = alarm.subject().structure();
          Production production =
              structures
                  .current()
                  .find(code)
                  .map(known -> new Production(alarm.subject().line(), known))
                  .orElseThrow(() -> new NoSuchElementException("no structure \"" + code + "\""));
          return new SuspectRollReader(tables, production, structures.times(production.structure()))
              .read(alarm);
        });
  }

  /**
   * Holds rolls until somebody decides about them; a roll that is to be scrapped or reworked stays
   * so.
   *
   * @throws NoSuchElementException if there is no such roll or alarm
   * @throws IllegalStateException if another decision was made in the meantime, or forbids it
   */
  public void hold(RollDecision decision) {
    if (decision.state() != RollState.HELD) {
      throw new IllegalArgumentException("this only holds rolls");
    }
    decide(decision, RollsDesk::refuseToUndo);
  }

  /**
   * Says what becomes of rolls.
   *
   * @throws NoSuchElementException if there is no such roll or alarm
   * @throws IllegalStateException if another decision was made in the meantime
   */
  public void dispose(RollDecision decision) {
    decide(decision, before -> {});
  }

  private static void refuseToUndo(Disposition before) {
    if (before.state() == RollState.SCRAPPED || before.state() == RollState.REWORK) {
      throw new IllegalStateException(
          words(before) + "; only who decides about rolls can change that");
    }
  }

  private void decide(RollDecision decision, Consumer<Disposition> check) {
    Instant now = clock.instant();
    List<Alarm> alarms =
        store.write(
            tables -> {
              decision.alarmId().ifPresent(id -> alarm(tables, id));
              List<Disposition> decided =
                  decision.rolls().entrySet().stream()
                      .sorted(Comparator.comparing(entry -> entry.getKey().words()))
                      .map(
                          entry -> {
                            RollKey roll = entry.getKey();
                            Optional<Disposition> before = tables.rolls().newest(roll);
                            checkSeen(tables, roll, before, entry.getValue());
                            before.ifPresent(check);
                            return keep(tables, next(decision, roll, before, now));
                          })
                      .toList();
              return note(tables, decided);
            });
    alarms.forEach(
        alarm ->
            listener.accept(
                new PlantEvent.AlarmChanged(
                    alarm.id(), alarm.subject().line(), alarm.state().word())));
  }

  private static void checkSeen(
      Tables tables, RollKey roll, Optional<Disposition> before, int seen) {
    int version = before.map(decided -> decided.revision().version()).orElse(0);
    if (version != seen) {
      throw new IllegalStateException(
          before.map(RollsDesk::words).orElse("nobody has decided about " + roll.words() + " yet"));
    }
    if (!tables.rolls().isKnown(roll)) {
      throw new NoSuchElementException("no " + roll.words());
    }
  }

  private static Disposition next(
      RollDecision decision, RollKey roll, Optional<Disposition> before, Instant now) {
    before
        .filter(decided -> decided.state() == decision.state())
        .ifPresent(
            decided -> {
              throw new IllegalStateException(words(decided) + " already");
            });
    int version = before.map(decided -> decided.revision().version()).orElse(0) + 1;
    OptionalLong alarmId =
        decision.alarmId().isPresent()
            ? decision.alarmId()
            : before.map(Disposition::alarmId).orElse(OptionalLong.empty());
    return new Disposition(
        roll,
        decision.state(),
        new Revision(version, decision.by(), decision.reason(), now),
        alarmId);
  }

  private static Disposition keep(Tables tables, Disposition disposition) {
    Revision revision = disposition.revision();
    tables.rolls().add(disposition);
    tables
        .audit()
        .add(
            new AuditEntry(
                revision.at(),
                revision.author(),
                "roll",
                disposition.roll().words() + ", version " + revision.version(),
                disposition.state().words() + ": " + revision.reason()));
    return disposition;
  }

  /** One line in the history of each alarm that it is about, however many rolls there are. */
  private static List<Alarm> note(Tables tables, List<Disposition> decided) {
    Map<Long, List<Disposition>> byAlarm =
        decided.stream()
            .filter(each -> each.alarmId().isPresent())
            .collect(
                Collectors.groupingBy(
                    each -> each.alarmId().getAsLong(), TreeMap::new, Collectors.toList()));
    byAlarm.forEach(
        (alarmId, rolls) -> {
          Disposition one = rolls.get(0);
          String names =
              rolls.stream().map(each -> each.roll().roll()).collect(Collectors.joining(", "));
          String what =
              (rolls.size() == 1 ? "roll " : "rolls ")
                  + names
                  + " "
                  + one.state().words()
                  + ": "
                  + one.revision().reason();
          HistoryEntry entry = new HistoryEntry(one.revision().at(), one.revision().author(), what);
          tables.alarms().note(alarmId, entry);
        });
    return byAlarm.keySet().stream().map(tables.alarms()::find).flatMap(Optional::stream).toList();
  }

  private static Alarm alarm(Tables tables, long alarmId) {
    return tables
        .alarms()
        .find(alarmId)
        .orElseThrow(() -> new NoSuchElementException("no alarm " + alarmId));
  }

  private static String words(Disposition decided) {
    return decided.roll().words()
        + " was "
        + decided.state().words()
        + " by "
        + decided.revision().author();
  }
}
