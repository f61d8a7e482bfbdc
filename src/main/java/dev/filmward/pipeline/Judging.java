package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.ProductionJudge.JudgedSample;
import dev.filmward.store.SampleTable.Production;
import dev.filmward.store.Tables;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Judges samples that changed, in the transaction that changed them, and tells of it afterwards.
 * Thread-safe; a {@link Round} is not.
 */
final class Judging {
  /** Samples older than this when they come raise no horn. Common practice, no source. */
  private static final Duration OLD_NEWS = Duration.ofHours(2);

  private final Clock clock;
  private final Consumer<PlantEvent> listener;

  Judging(Clock clock, Consumer<PlantEvent> listener) {
    this.clock = clock;
    this.listener = listener;
  }

  /** Begins before anything is changed, so that it knows which samples come late. */
  Round begin(Tables tables) {
    return new Round(tables);
  }

  /** What one transaction changed. */
  final class Round {
    private final Tables tables;
    private final List<Production> before;
    private final Map<String, Change> changes = new LinkedHashMap<>();
    private final List<PlantEvent> events = new ArrayList<>();

    private Round(Tables tables) {
      this.tables = tables;
      this.before = tables.samples().productions();
    }

    /** Notes that a sample is new or changed. */
    void changed(Sample sample, Structure structure) {
      String line = sample.key().line();
      changes
          .computeIfAbsent(line + '\0' + structure.code(), key -> new Change(line, structure))
          .seen(sample.takenAt());
      events.add(new PlantEvent.SampleCame(sample.key(), sample.takenAt()));
    }

    /** Judges all that changed; the answer tells the listener and is run after the commit. */
    Runnable judge() {
      for (Change change : changes.values()) {
        judge(change, newestBefore(change));
      }
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
      return this::tell;
    }

    private void judge(Change change, Optional<Instant> newest) {
      ProductionJudge judge = new ProductionJudge(change.line, change.structure, tables);
      AlarmKeeper keeper = new AlarmKeeper(tables, change.structure);
      Instant oldNews = clock.instant().minus(OLD_NEWS);
      for (JudgedSample sample : judge.judgeSince(change.earliest)) {
        if (newest.isPresent() && !sample.takenAt().isAfter(newest.get())) {
          keeper.late(sample);
        } else {
          keeper.inOrder(sample, sample.takenAt().isBefore(oldNews));
        }
      }
      for (Alarm alarm : keeper.changed()) {
        events.add(
            new PlantEvent.AlarmChanged(alarm.id(), alarm.subject().line(), alarm.state().word()));
      }
    }

    private Optional<Instant> newestBefore(Change change) {
      return before.stream()
          .filter(made -> made.line().equals(change.line))
          .filter(made -> made.structure().equals(change.structure.code()))
          .map(Production::lastAt)
          .findFirst();
    }

    private void tell() {
      events.forEach(listener);
    }
  }

  private static final class Change {
    private final String line;
    private final Structure structure;
    private Instant earliest = Instant.MAX;

    private Change(String line, Structure structure) {
      this.line = line;
      this.structure = structure;
    }

    private void seen(Instant takenAt) {
      if (takenAt.isBefore(earliest)) {
        earliest = takenAt;
      }
    }
  }
}
