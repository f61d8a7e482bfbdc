package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.SuspectRolls.GoodSample;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SignalTable;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgroup;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Finds the last sample before an alarm at which no member of its subject signalled, every layer
 * was measured, and nothing was out of the individual or the average specification. It goes by the
 * figures of the samples, so that it also sees those whose readings were taken away. For one
 * thread.
 */
final class LastGoodSample {
  private static final int AT_ONCE = 128;

  private final Tables tables;
  private final Production production;
  private final StructureTimes times;

  LastGoodSample(Tables tables, Production production, StructureTimes times) {
    this.tables = tables;
    this.production = production;
    this.times = times;
  }

  /** The last good sample before the excursion opened. */
  Optional<GoodSample> before(Alarm alarm) {
    Instant moment = alarm.excursion().course().openedAt();
    List<FigureRow> page = pageBefore(moment);
    while (!page.isEmpty()) {
      Span span = new Span(page.get(0).takenAt(), page.get(page.size() - 1).takenAt());
      Set<Long> bad = bad(span, alarm);
      for (int i = page.size() - 1; i >= 0; i--) {
        FigureRow row = page.get(i);
        if (!bad.contains(row.sampleId())) {
          return Optional.of(new GoodSample(row.key(), row.takenAt()));
        }
      }
      page = pageBefore(span.from());
    }
    return Optional.empty();
  }

  /** Samples with a total, oldest first. */
  private List<FigureRow> pageBefore(Instant moment) {
    Characteristic total =
        production.characteristics().stream()
            .filter(each -> each.kind() == Characteristic.Kind.TOTAL)
            .findFirst()
            .orElseThrow();
    return tables.figures().before(production.series(total), moment, AT_ONCE);
  }

  private Set<Long> bad(Span span, Alarm alarm) {
    Set<Long> bad = new HashSet<>();
    for (Characteristic each : production.characteristics()) {
      Series series = production.series(each);
      for (FigureRow row : tables.figures().within(series, span)) {
        if (row.subgroup().isEmpty()
            || isOutOfSpec(times.at(row.takenAt()), row.subgroup().get(), each)) {
          bad.add(row.sampleId());
        }
      }
      if (alarm.subject().members().contains(each)) {
        tables.signals().within(series, span).stream()
            .map(SignalTable.Stored::sampleId)
            .forEach(bad::add);
      }
    }
    return bad;
  }

  private static boolean isOutOfSpec(
      Structure structure, Subgroup subgroup, Characteristic characteristic) {
    return structure.spec(characteristic).excludes(subgroup.least())
        || structure.spec(characteristic).excludes(subgroup.greatest())
        || structure.average(characteristic).excludes(subgroup.mean());
  }
}
