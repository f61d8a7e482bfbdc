package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.Excursion;
import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import dev.filmward.store.AlarmTable.HistoryEntry;
import dev.filmward.store.SampleTable;
import dev.filmward.store.Tables;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * Judges samples that changed, in the transaction that changed them, and tells of it afterwards.
 * Thread-safe; a {@link Round} is not.
 */
final class Judging {
  /** Of more samples in one transaction, only the newest of each production is told of. */
  private static final int MOST_TOLD = 200;

  private final Clock clock;
  private final Consumer<PlantEvent> listener;
  private final AlarmNews.Source newsOf;
  private final Supplier<Structures> structures;

  /**
   * @param structures all that are known
   */
  Judging(
      Clock clock,
      Consumer<PlantEvent> listener,
      AlarmNews.Source newsOf,
      Supplier<Structures> structures) {
    this.structures = structures;
    this.clock = clock;
    this.listener = listener;
    this.newsOf = newsOf;
  }

  /** Begins before anything is changed, so that it knows which samples come late. */
  Round begin(Tables tables) {
    return new Round(tables);
  }

  /** Tells how many samples one transaction kept and judged. */
  void tellJudged(int samples, Instant receivedAt) {
    if (samples > 0) {
      listener.accept(new PlantEvent.SamplesJudged(samples, receivedAt, clock.instant()));
    }
  }

  /** What one transaction changed. */
  final class Round {
    private final Tables tables;
    private final AlarmNews news;
    private final List<SampleTable.Production> before;
    private final Map<String, Change> changes = new LinkedHashMap<>();
    private final List<PlantEvent.SampleCame> samples = new ArrayList<>();
    private final List<PlantEvent> events = new ArrayList<>();

    private Round(Tables tables) {
      this.tables = tables;
      this.news = newsOf.begin(tables);
      this.before = tables.samples().productions();
    }

    /** Notes that a sample is new or changed. */
    void changed(Sample sample, Structure structure) {
      String line = sample.key().line();
      changes
          .computeIfAbsent(line + '\0' + structure.code(), key -> new Change(line, structure))
          .changed(sample);
      samples.add(new PlantEvent.SampleCame(sample.key(), sample.takenAt()));
    }

    /** Judges all that changed; the answer tells the listener and is run after the commit. */
    Runnable judge() {
      for (Change change : changes.values()) {
        screen(change, newestBefore(change));
        judge(change, newestBefore(change));
      }
      changes.values().stream().map(change -> change.line).distinct().forEach(this::endOvertaken);
      news.write();
      return this::tell;
    }

    /**
     * Judges a production from a moment on as if it came in order.
     *
     * @return tells the listener; to be run after the commit
     */
    Runnable judgeAll(String line, Structure structure, Instant since) {
      Change change = new Change(line, structure);
      change.seen(since);
      judge(change, Optional.empty());
      endOvertaken(line);
      news.write();
      return this::tell;
    }

    /**
     * Works the alarms of a production out again from a moment on, because something that they
     * follow from was changed afterwards.
     *
     * @return tells the listener; to be run after the commit
     */
    Runnable judgeAgain(String line, Structure structure, Instant since) {
      Change change = new Change(line, structure);
      change.seen(since);
      tell(change, replay(change, newestBefore(change).orElse(clock.instant())));
      endOvertaken(line);
      return this::tell;
    }

    /** Holds misread samples out before they are judged. */
    private void screen(Change change, Optional<Instant> newest) {
      Screening screening =
          new Screening(tables, change.production(), structures.get(), clock.instant());
      if (change.isInOrder(newest)) {
        screening.ofNew(change.samples);
      } else {
        screening.ofChanged(change.samples);
      }
    }

    /**
     * Works all out again from the first of some samples on, about whose readings somebody decided.
     *
     * @param some at least one, all of one line and structure
     * @return tells the listener; to be run after the commit
     */
    Runnable screenAgain(List<SampleTable.Stored> some, Structure structure) {
      Change change = new Change(some.get(0).sample().key().line(), structure);
      some.forEach(stored -> change.changed(stored.sample()));
      new Refiguring(tables).run(some, structure);
      new Screening(tables, change.production(), structures.get(), clock.instant())
          .ofChanged(change.samples);
      tell(change, replay(change, newestBefore(change).orElse(clock.instant())));
      endOvertaken(change.line);
      news.write();
      return this::tell;
    }

    private void judge(Change change, Optional<Instant> newest) {
      boolean inOrder = change.isInOrder(newest);
      Map<Long, String> states = inOrder ? follow(change) : replay(change, newest.get());
      tell(change, states);
    }

    private void tell(Change change, Map<Long, String> states) {
      states.forEach(
          (id, state) -> events.add(new PlantEvent.AlarmChanged(id, change.line, state)));
    }

    private Map<Long, String> follow(Change change) {
      List<Alarm> live = tables.alarms().live(change.line, change.structure.code());
      AlarmKeeper keeper = new AlarmKeeper(news, change.structure, live, holding());
      change.judge(tables).judgeAndKeep(change.earliest).forEach(keeper::next);
      return keeper.finish();
    }

    /** Goes back to a moment at which no excursion was going on, and works all out from there. */
    private Map<Long, String> replay(Change change, Instant newest) {
      Instant start = change.earliest;
      List<Alarm> known = unsettledAt(change, start);
      Instant earlier = earliestOpening(known, start);
      while (earlier.isBefore(start)) {
        start = earlier;
        known = unsettledAt(change, start);
        earlier = earliestOpening(known, start);
      }
      AlarmReplay replay =
          new AlarmReplay(news, change.structure, known, holding().oldBefore(newest));
      return replay.run(change.judge(tables).judgeAndKeep(start));
    }

    /** What a line made before it went on to something else cannot signal any more. */
    private void endOvertaken(String line) {
      for (Alarm alarm : tables.alarms().live(line)) {
        tables
            .samples()
            .changedAfter(
                line, alarm.subject().structure(), alarm.excursion().course().lastSignalAt())
            .ifPresent(moment -> end(alarm, moment));
      }
    }

    private void end(Alarm alarm, Instant moment) {
      Excursion over = alarm.excursion().endedAt(moment);
      Holding holding = holding();
      Alarm ended =
          tables.alarms().save(alarm.moved(over, holding.of(over, alarm.state()), holding.now()));
      news.changed(Optional.of(alarm), ended);
      String state = ended.state().word();
      events.add(new PlantEvent.AlarmChanged(ended.id(), ended.subject().line(), state));
      tables
          .alarms()
          .note(
              ended.id(),
              new HistoryEntry(
                  moment, AlarmKeeper.SYSTEM, "the line went on to something else; now " + state));
    }

    private List<Alarm> unsettledAt(Change change, Instant moment) {
      return tables.alarms().unsettledAt(change.line, change.structure.code(), moment);
    }

    private static Instant earliestOpening(List<Alarm> alarms, Instant otherwise) {
      return alarms.stream()
          .map(alarm -> alarm.excursion().course().openedAt())
          .min(Comparator.naturalOrder())
          .orElse(otherwise);
    }

    private Holding holding() {
      return new Holding(tables, clock.instant());
    }

    private Optional<Instant> newestBefore(Change change) {
      return before.stream()
          .filter(made -> made.line().equals(change.line))
          .filter(made -> made.structure().equals(change.structure.code()))
          .map(SampleTable.Production::lastAt)
          .findFirst();
    }

    private void tell() {
      told().forEach(listener);
      events.forEach(listener);
    }

    private Collection<PlantEvent.SampleCame> told() {
      if (samples.size() <= MOST_TOLD) {
        return samples;
      }
      Map<List<String>, PlantEvent.SampleCame> newest = new LinkedHashMap<>();
      for (PlantEvent.SampleCame came : samples) {
        newest.merge(
            List.of(came.key().line(), came.key().structure()),
            came,
            (a, b) -> b.takenAt().isBefore(a.takenAt()) ? a : b);
      }
      return newest.values();
    }
  }

  private static final class Change {
    private final String line;
    private final Structure structure;
    private final List<Sample> samples = new ArrayList<>();
    private Instant earliest = Instant.MAX;

    private Change(String line, Structure structure) {
      this.line = line;
      this.structure = structure;
    }

    private ProductionJudge judge(Tables tables) {
      return ProductionJudge.asKept(production(), tables);
    }

    private Production production() {
      return new Production(line, structure);
    }

    private boolean isInOrder(Optional<Instant> newest) {
      return newest.isEmpty() || earliest.isAfter(newest.get());
    }

    private void changed(Sample sample) {
      samples.add(sample);
      seen(sample.takenAt());
    }

    private void seen(Instant takenAt) {
      if (takenAt.isBefore(earliest)) {
        earliest = takenAt;
      }
    }
  }
}
