package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.Course;
import dev.filmward.alarm.RollKey;
import dev.filmward.capability.LaneValues;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.SuspectRolls.GoodSample;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SampleTable.Stored;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgroup;
import dev.filmward.subgroup.Subgrouping;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Counts what was made since the last good sample before an alarm, roll by roll. For one thread.
 */
final class SuspectRollReader {
  private final Tables tables;
  private final Production production;
  private final StructureTimes times;
  private final Subgrouping subgrouping;
  private final Charted charted;

  SuspectRollReader(Tables tables, Production production, StructureTimes times) {
    this.tables = tables;
    this.production = production;
    this.times = times;
    this.charted = Charted.asKept(tables);
    this.subgrouping = Subgrouping.layersAndTotal(production.structure());
  }

  SuspectRolls read(Alarm alarm) {
    Course course = alarm.excursion().course();
    Optional<GoodSample> good = new LastGoodSample(tables, production, times).before(alarm);
    Instant newest = production.next(tables).orElse(course.lastSignalAt());
    Span span =
        new Span(
            good.map(GoodSample::takenAt).orElse(Span.always().from()),
            course.returnedAt().orElse(newest));
    Map<String, Count> counts = new LinkedHashMap<>();
    tables
        .samples()
        .within(
            production.line(),
            production.structure().code(),
            span,
            stored -> count(counts, stored, good));
    return new SuspectRolls(
        good,
        span,
        course.returnedAt().isPresent(),
        counts.values().stream().map(Count::roll).toList());
  }

  private void count(Map<String, Count> counts, Stored stored, Optional<GoodSample> good) {
    Sample sample = stored.sample();
    Count count = counts.computeIfAbsent(sample.key().roll(), roll -> new Count(sample));
    count.lastAt = sample.takenAt();
    if (good.filter(last -> last.key().equals(sample.key())).isEmpty()) {
      count.add(stored);
    }
  }

  private final class Count {
    private final RollKey key;
    private final Instant firstAt;
    private Instant lastAt;
    private int samples;
    private int readings;
    private int outOfSpec;
    private int averages;
    private int heldOut;
    private int thinned;

    private Count(Sample first) {
      key = new RollKey(first.key().line(), first.key().structure(), first.key().roll());
      firstAt = first.takenAt();
      lastAt = first.takenAt();
    }

    private void add(Stored stored) {
      samples++;
      if (stored.isThinned()) {
        thinned++;
        return;
      }
      Optional<Sample> charted = SuspectRollReader.this.charted.of(stored.sample());
      if (charted.isEmpty()) {
        heldOut++;
        return;
      }
      add(charted.get());
    }

    private void add(Sample sample) {
      Structure structure = times.at(sample.takenAt());
      for (Characteristic each : subgrouping.characteristics()) {
        addReadings(sample, each, structure.spec(each));
        SpecLimits average = structure.average(each);
        Optional<Subgroup> subgroup = subgrouping.of(sample, each);
        averages += subgroup.filter(one -> average.excludes(one.mean())).isPresent() ? 1 : 0;
      }
    }

    private void addReadings(Sample sample, Characteristic each, SpecLimits spec) {
      for (double um : LaneValues.of(sample, each)) {
        readings += Double.isNaN(um) ? 0 : 1;
        outOfSpec += spec.excludes(um) ? 1 : 0;
      }
    }

    private SuspectRoll roll() {
      return new SuspectRoll(
          key, firstAt, lastAt, samples, readings, outOfSpec, averages, heldOut, thinned);
    }
  }
}
