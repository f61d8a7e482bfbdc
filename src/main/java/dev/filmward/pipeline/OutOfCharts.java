package dev.filmward.pipeline;

import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.Tables;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/**
 * Which samples are left out of charts because they were misread, as is kept when their day is
 * asked for the first time. Within one transaction, for one thread; remembers a handful of days.
 */
final class OutOfCharts {
  private static final long DAY_SECONDS = Duration.ofDays(1).toSeconds();
  private static final int MOST_DAYS = 1000;

  private final Tables tables;
  private final Map<Day, Set<SampleKey>> known = new HashMap<>();

  OutOfCharts(Tables tables) {
    this.tables = tables;
  }

  /** A day of a production, counted from 1970 in UTC. */
  private record Day(String line, String structure, long number) {}

  boolean holds(Sample sample) {
    SampleKey key = sample.key();
    long number = Math.floorDiv(sample.takenAt().getEpochSecond(), DAY_SECONDS);
    if (known.size() >= MOST_DAYS) {
      known.clear();
    }
    return known
        .computeIfAbsent(new Day(key.line(), key.structure(), number), this::ask)
        .contains(key);
  }

  private Set<SampleKey> ask(Day day) {
    Instant from = Instant.ofEpochSecond(day.number * DAY_SECONDS);
    Span span = new Span(from, from.plusSeconds(DAY_SECONDS).minusNanos(1));
    return tables.screening().outOfCharts(day.line, day.structure, span);
  }
}
