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
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** The samples of one structure on one line, summed up for all its series. For one thread. */
final class SampleColumns {
  private final Subgrouping subgrouping;
  private final List<SeriesColumns> series = new ArrayList<>();
  private final List<SampleKey> keys = new ArrayList<>();
  private final List<Instant> takenAt = new ArrayList<>();

  SampleColumns(String line, Structure structure, AnalysisScope scope) {
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

  void add(Sample sample) {
    keys.add(sample.key());
    takenAt.add(sample.takenAt());
    for (int i = 0; i < series.size(); i++) {
      series.get(i).add(sample, subgrouping.of(sample, subgrouping.characteristics().get(i)));
    }
  }

  String name(int index) {
    return keys.get(index).sample();
  }

  Instant takenAt(int index) {
    return takenAt.get(index);
  }

  /** Series that were measured nowhere are left out. */
  List<Series> analyse() {
    int[] timeOrder = timeOrder();
    return series.stream()
        .filter(columns -> !columns.isEmpty())
        .map(columns -> columns.analyse(this, timeOrder))
        .toList();
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
            keys.get(0).line(),
            keys.get(0).structure(),
            series.size(),
            interval.get(),
            prices.of(tests),
            prices.changes(tests)));
  }

  private Optional<Duration> medianInterval() {
    List<Instant> times = takenAt.stream().sorted().toList();
    List<Duration> gaps = new ArrayList<>();
    for (int i = 1; i < times.size(); i++) {
      gaps.add(Duration.between(times.get(i - 1), times.get(i)));
    }
    gaps.sort(null);
    return gaps.isEmpty()
        ? Optional.empty()
        : Optional.of(gaps.get(gaps.size() / 2)).filter(gap -> !gap.isZero());
  }

  private int[] timeOrder() {
    Comparator<Integer> order =
        Comparator.<Integer, Instant>comparing(takenAt::get).thenComparing(keys::get);
    if (isInOrder(order)) {
      return IntStream.range(0, keys.size()).toArray();
    }
    return IntStream.range(0, keys.size()).boxed().sorted(order).mapToInt(i -> i).toArray();
  }

  private boolean isInOrder(Comparator<Integer> order) {
    for (int i = 1; i < keys.size(); i++) {
      if (order.compare(i - 1, i) > 0) {
        return false;
      }
    }
    return true;
  }
}
