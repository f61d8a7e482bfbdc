package dev.filmward.pipeline;

import dev.filmward.capability.CapabilityQuestion;
import dev.filmward.chart.ChartKind;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.film.Sample;
import dev.filmward.film.SeriesKey;
import dev.filmward.pipeline.Analysis.Charted;
import dev.filmward.pipeline.Analysis.PointSignal;
import dev.filmward.pipeline.Analysis.Series;
import dev.filmward.pipeline.Analysis.Sizes;
import dev.filmward.pipeline.AnalysisScope.Closeness;
import dev.filmward.rule.SeriesTests;
import dev.filmward.rule.Signal;
import dev.filmward.stats.CompensatedSum;
import dev.filmward.subgroup.Subgroup;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The subgroups of one series over the samples of its production, kept because limits that are
 * computed from all of them can only be drawn in afterwards. For one thread.
 */
final class SeriesColumns {
  private final SeriesKey key;
  private final CapabilityQuestion question;
  private final AnalysisScope scope;
  private final Optional<CloserLook> closerLook;
  private final SizeColumn sizes = new SizeColumn();
  private final NumberColumn means = new NumberColumn();
  private final NumberColumn ranges = new NumberColumn();

  /** Sums of squares within each subgroup, where a chart or a closer look asks for them. */
  private final Optional<NumberColumn> squares;

  private final CompensatedSum allSquares = new CompensatedSum();
  private final SizeCount sizeCount = new SizeCount();

  SeriesColumns(SeriesKey key, CapabilityQuestion question, AnalysisScope scope) {
    this.key = key;
    this.question = question;
    this.scope = scope;
    this.squares =
        scope.closeness() == Closeness.DETAIL || !scope.charts().isEmpty()
            ? Optional.of(new NumberColumn())
            : Optional.empty();
    this.closerLook =
        scope.closeness() == Closeness.DETAIL
            ? Optional.of(new CloserLook(key.characteristic(), question))
            : Optional.empty();
  }

  /** Adds the subgroup of the next sample; empty where nothing was measured. */
  void add(Sample sample, Optional<Subgroup> subgroup) {
    closerLook.ifPresent(look -> look.add(sample));
    add(
        subgroup.map(Subgroup::size).orElse(0),
        subgroup.map(Subgroup::mean).orElse(0.0),
        subgroup.map(Subgroup::range).orElse(0.0),
        subgroup.map(Subgroup::sumOfSquares).orElse(0.0));
  }

  /** Adds a subgroup of the next sample that was summed up before; without a closer look. */
  void add(SampleFigures samples, int subgroup) {
    add(
        samples.size(subgroup),
        samples.mean(subgroup),
        samples.range(subgroup),
        samples.sumOfSquares(subgroup));
  }

  private void add(int size, double mean, double range, double sumOfSquares) {
    sizes.add(size);
    means.add(mean);
    ranges.add(range);
    if (squares.isPresent()) {
      squares.get().add(sumOfSquares);
    }
    if (size > 0) {
      sizeCount.add(size, range);
      allSquares.add(sumOfSquares);
    }
  }

  /** The most frequent subgroup size, 0 where there is no subgroup. */
  int usualSize() {
    return isEmpty() ? 0 : sizeCount.sizes(0).usual();
  }

  boolean isEmpty() {
    return sizeCount.subgroups() == 0;
  }

  /** Sums the series up, in the time order of its samples. */
  Series analyse(SampleColumns samples, int[] timeOrder) {
    int[] measured =
        sizeCount.subgroups() == timeOrder.length
            ? timeOrder
            : Arrays.stream(timeOrder).filter(at -> size(at) > 0).toArray();
    SeriesFigures figures = figures(measured);
    figures.addSquares(allSquares.value());
    Sizes counts = sizeCount.sizes(figures.readings());
    int[] baseline = scope.baseline().map(of -> baseline(of, samples, measured)).orElse(measured);
    Optional<MeanRangeLimits> limits =
        scope.baseline().isEmpty() ? figures.limits() : figures(baseline).limits();
    List<PointSignal> signals =
        limits.map(found -> signals(found, samples, measured)).orElse(List.of());
    return new Series(
        key,
        counts,
        figures.mean().orElseThrow(),
        sizeCount.rangeBar(),
        figures.sigmaWithin(),
        figures.sigmaOverall(),
        baseline.length,
        limits.map(found -> found.mean(counts.usual())),
        limits.filter(found -> counts.usual() > 1).map(found -> found.range(counts.usual())),
        question.individual(),
        figures.capability(question.individual()),
        signals,
        limits.map(found -> charts(found, measured, baseline)).orElse(List.of()),
        closerLook.map(look -> detail(look, samples, measured, signals)));
  }

  private SeriesDetail detail(
      CloserLook look, SampleColumns samples, int[] measured, List<PointSignal> signals) {
    return look.detail(column(measured), index -> samples.takenAt(measured[index]), signals);
  }

  private List<Charted> charts(MeanRangeLimits limits, int[] measured, int[] baseline) {
    return scope.charts().stream()
        .map(chart -> chart.plot(column(measured), column(baseline), limits))
        .flatMap(Optional::stream)
        .toList();
  }

  private SubgroupColumn column(int[] subgroups) {
    return new SubgroupColumn() {
      @Override
      public int count() {
        return subgroups.length;
      }

      @Override
      public int size(int index) {
        return SeriesColumns.this.size(subgroups[index]);
      }

      @Override
      public double mean(int index) {
        return means.get(subgroups[index]);
      }

      @Override
      public double sumOfSquares(int index) {
        return squares.orElseThrow().get(subgroups[index]);
      }
    };
  }

  private SeriesFigures figures(int[] subgroups) {
    SeriesFigures figures = new SeriesFigures();
    for (int at : subgroups) {
      figures.add(size(at), means.get(at), ranges.get(at));
    }
    return figures;
  }

  private static int[] baseline(BaselineChoice choice, SampleColumns samples, int[] measured) {
    int taken = Math.min(choice.subgroups(), measured.length);
    return switch (choice.where()) {
      case FIRST -> Arrays.copyOf(measured, taken);
      case LAST -> Arrays.copyOfRange(measured, measured.length - taken, measured.length);
      case BETWEEN ->
          Arrays.stream(measured).filter(at -> choice.spans(samples.takenAt(at))).toArray();
    };
  }

  private List<PointSignal> signals(MeanRangeLimits limits, SampleColumns samples, int[] measured) {
    SeriesTests tests = new SeriesTests(scope.tests(), ChartKind.RANGE);
    List<PointSignal> signals = new ArrayList<>();
    for (int index = 0; index < measured.length; index++) {
      int at = measured[index];
      int fulfilled = test(tests, limits, at);
      if (fulfilled != 0) {
        String name = samples.name(at);
        Instant takenAt = samples.takenAt(at);
        for (Signal signal : Signal.decode(fulfilled)) {
          signals.add(new PointSignal(index, name, takenAt, signal));
        }
      }
    }
    return signals;
  }

  private int test(SeriesTests tests, MeanRangeLimits limits, int at) {
    int size = size(at);
    double zMean = limits.zMean(size, means.get(at));
    return size == 1 ? tests.next(zMean) : tests.next(zMean, limits.zRange(size, ranges.get(at)));
  }

  private int size(int at) {
    return sizes.get(at);
  }
}
