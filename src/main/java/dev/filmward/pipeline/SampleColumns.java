package dev.filmward.pipeline;

import dev.filmward.capability.CapabilityQuestion;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.SeriesKey;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.Analysis.Series;
import dev.filmward.rule.TestSet;
import dev.filmward.rule.price.ChartedLine;
import dev.filmward.rule.price.PriceList;
import dev.filmward.rule.price.SamplingPlan;
import dev.filmward.stats.ChartConstants;
import dev.filmward.subgroup.Subgrouping;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The samples of one structure on one line, summed up for all its series. For one thread. */
final class SampleColumns {
  private final Subgrouping subgrouping;
  private final List<SeriesColumns> series = new ArrayList<>();
  private final String line;
  private final Structure structure;
  private final NameColumn names = new NameColumn();
  private final LongColumn takenAtMicros = new LongColumn();

  SampleColumns(String line, Structure structure, AnalysisScope scope) {
    this.line = line;
    this.structure = structure;
    this.subgrouping = scope.charted().apply(structure);
    for (Characteristic characteristic : subgrouping.characteristics()) {
      SeriesKey key = new SeriesKey(line, structure.code(), characteristic);
      series.add(
          new SeriesColumns(
              key,
              CapabilityQuestion.of(
                  structure.average(characteristic), structure.spec(characteristic)),
              scope));
    }
  }

  /** Adds a sample that was summed up before. */
  void add(SampleFigures samples, int sample) {
    names.add(samples.key(sample));
    takenAtMicros.add(Micros.of(samples.takenAt(sample)));
    int first = samples.firstSubgroup(sample);
    for (int i = 0; i < series.size(); i++) {
      series.get(i).add(samples, first + i);
    }
  }

  void add(Sample sample) {
    names.add(sample.key());
    takenAtMicros.add(Micros.of(sample.takenAt()));
    for (int i = 0; i < series.size(); i++) {
      series.get(i).add(sample, subgrouping.of(sample, subgrouping.characteristics().get(i)));
    }
  }

  String name(int index) {
    return names.sample(index);
  }

  Instant takenAt(int index) {
    return Micros.toInstant(takenAtMicros.get(index));
  }

  /** Series that were measured nowhere are left out. */
  Stream<Supplier<Series>> analyses() {
    int[] timeOrder = timeOrder();
    return series.stream()
        .filter(columns -> !columns.isEmpty())
        .map(columns -> () -> columns.analyse(this, timeOrder));
  }

  boolean isOf(SampleKey key) {
    return structure.code().equals(key.structure()) && line.equals(key.line());
  }

  /** How many samples there are. */
  int count() {
    return takenAtMicros.size();
  }

  /** What the tests cost; empty where no interval or range can be told. */
  Optional<LinePrice> price(TestSet tests) {
    int size = series.stream().mapToInt(SeriesColumns::usualSize).max().orElse(0);
    Optional<Duration> interval = medianInterval();
    if (interval.isEmpty() || size < 2 || size > ChartConstants.LARGEST_SIZE) {
      return Optional.empty();
    }
    PriceList prices =
        new PriceList(
            new ChartedLine(series.size(), size),
            new SamplingPlan(interval.get(), LinePrice.SHIFT));
    return Optional.of(
        new LinePrice(
            line,
            structure.code(),
            series.size(),
            interval.get(),
            prices.of(tests),
            prices.changes(tests)));
  }

  private Optional<Duration> medianInterval() {
    long[] times = new long[count()];
    for (int i = 0; i < times.length; i++) {
      times[i] = takenAtMicros.get(i);
    }
    Arrays.sort(times);
    List<Duration> gaps = new ArrayList<>();
    for (int i = 1; i < times.length; i++) {
      gaps.add(Duration.of(times[i] - times[i - 1], ChronoUnit.MICROS));
    }
    gaps.sort(null);
    return gaps.isEmpty()
        ? Optional.empty()
        : Optional.of(gaps.get(gaps.size() / 2)).filter(gap -> !gap.isZero());
  }

  private int[] timeOrder() {
    IntStream all = IntStream.range(0, count());
    return isInOrder()
        ? all.toArray()
        : all.boxed().sorted(this::compare).mapToInt(i -> i).toArray();
  }

  private boolean isInOrder() {
    for (int i = 1; i < count(); i++) {
      if (compare(i - 1, i) > 0) {
        return false;
      }
    }
    return true;
  }

  private int compare(int a, int b) {
    int byTime = Long.compare(takenAtMicros.get(a), takenAtMicros.get(b));
    return byTime == 0 ? key(a).compareTo(key(b)) : byTime;
  }

  private SampleKey key(int index) {
    return new SampleKey(line, structure.code(), names.roll(index), names.sample(index));
  }
}
