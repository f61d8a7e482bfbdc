package dev.filmward.report;

import dev.filmward.capability.CpkMethod;
import dev.filmward.capability.EffectiveSize;
import dev.filmward.capability.IndexConfidence;
import dev.filmward.capability.Indices;
import dev.filmward.capability.SampleSizeWarning;
import dev.filmward.chart.Band;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.drift.Autocorrelation;
import dev.filmward.film.Characteristic;
import dev.filmward.film.SpecLimits;
import dev.filmward.pipeline.PointChoice;
import dev.filmward.pipeline.SeriesFigures;
import dev.filmward.pipeline.SpecTimes;
import dev.filmward.pipeline.StructureTimes;
import dev.filmward.report.CharacteristicWeek.ChartPoint;
import dev.filmward.report.CharacteristicWeek.Steadiness;
import dev.filmward.report.CharacteristicWeek.TrendWeek;
import dev.filmward.rule.Signal;
import dev.filmward.store.FigureColumns;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.SignalTable;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgroup;
import java.time.Instant;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;

/**
 * Reads what is kept of a film's charted series: figures of samples, limits and signals, for a week
 * and for the weeks before it. Within one transaction, for one thread.
 */
final class SeriesWeeks {
  private static final int CHART_PX = 800;
  private static final int FEWEST_FOR_LAG = 30;
  private static final List<String> ZONE_TESTS =
      List.of("beyond-limit", "two-of-three", "four-of-five", "eight-in-a-row");

  private final Tables tables;
  private final String line;
  private final StructureTimes times;
  private final ReportWeek week;

  SeriesWeeks(Tables tables, String line, StructureTimes times, ReportWeek week) {
    this.tables = tables;
    this.line = line;
    this.times = times;
    this.week = week;
  }

  /** One series in one week. */
  record Week(FigureColumns columns, List<LimitsVersion> limits, Map<Long, List<Signal>> signals) {

    /** What the samples of some of its time add up to. */
    Part part(Predicate<Instant> time) {
      Sum sum = sum(time);
      return new Part(sum.figures, sum.lag1(), sum.steadiness());
    }

    private Sum sum(Predicate<Instant> time) {
      Sum sum = new Sum();
      for (int i = 0; i < columns.count(); i++) {
        if (columns.size(i) > 0 && time.test(at(columns, i))) {
          sum.add(columns, i, limits, signals);
        }
      }
      return sum;
    }

    /** When it was measured last. */
    private Optional<Instant> last() {
      for (int i = columns.count() - 1; i >= 0; i--) {
        if (columns.size(i) > 0) {
          return Optional.of(at(columns, i));
        }
      }
      return Optional.empty();
    }

    List<ChartPoint> chart() {
      return SeriesWeeks.chart(columns, limits, signals);
    }
  }

  /** What samples of a series add up to. */
  record Part(SeriesFigures figures, double lag1, Steadiness steadiness) {}

  Week week(Characteristic characteristic) {
    return week(characteristic, week);
  }

  private Week week(Characteristic characteristic, ReportWeek of) {
    Series series = series(characteristic);
    FigureColumns columns = tables.figures().columns(series, FilmReader.span(of));
    return new Week(
        columns, tables.limits().of(series), columns.count() == 0 ? Map.of() : signals(series, of));
  }

  private Series series(Characteristic characteristic) {
    return new Series(line, times.code(), characteristic.position());
  }

  private Map<Long, List<Signal>> signals(Series series, ReportWeek of) {
    Map<Long, List<Signal>> signals = new HashMap<>();
    for (SignalTable.Stored stored : tables.signals().within(series, FilmReader.span(of))) {
      if (counts(stored.signal())) {
        signals.computeIfAbsent(stored.sampleId(), none -> new ArrayList<>()).add(stored.signal());
      }
    }
    return signals;
  }

  /** The four zone tests of the means, and ranges beyond their limit. */
  private static boolean counts(Signal signal) {
    String chart = signal.chart().word();
    return chart.equals("range")
        || (chart.equals("xbar") && ZONE_TESTS.contains(signal.test().word()));
  }

  private static final class Sum {
    private final SeriesFigures figures = new SeriesFigures();
    private final Autocorrelation neighbours = new Autocorrelation(1);
    private long judged;
    private long signalled;
    private double first = Double.NaN;
    private boolean varies;

    private void add(
        FigureColumns columns, int i, List<LimitsVersion> limits, Map<Long, List<Signal>> signals) {
      figures.add(columns.size(i), columns.mean(i), columns.range(i), columns.sumOfSquares(i));
      neighbours.add(columns.mean(i));
      varies |= !Double.isNaN(first) && columns.mean(i) != first;
      first = columns.mean(i);
      if (LimitsVersion.inForce(limits, at(columns, i)).isPresent()) {
        judged++;
        signalled += signals.containsKey(columns.sampleId(i)) ? 1 : 0;
      }
    }

    private double lag1() {
      return varies && neighbours.count() >= FEWEST_FOR_LAG ? neighbours.lag1() : 0;
    }

    private Steadiness steadiness() {
      return new Steadiness(judged, signalled, Steadfast.of(judged, signalled).isStable());
    }
  }

  private static Instant at(FigureColumns columns, int i) {
    return columns.takenAt(i);
  }

  private static List<ChartPoint> chart(
      FigureColumns columns, List<LimitsVersion> limits, Map<Long, List<Signal>> signals) {
    BitSet chosen = PointChoice.of(columns, CHART_PX);
    for (int i = 0; i < columns.count(); i++) {
      if (signals.containsKey(columns.sampleId(i))) {
        chosen.set(i);
      }
    }
    return chosen.stream()
        .mapToObj(columns::row)
        .map(row -> point(row, limits, signals.getOrDefault(row.sampleId(), List.of())))
        .toList();
  }

  private static ChartPoint point(FigureRow row, List<LimitsVersion> limits, List<Signal> signals) {
    Optional<Subgroup> subgroup = row.subgroup();
    Optional<Band> band =
        LimitsVersion.inForce(limits, row.takenAt())
            .flatMap(version -> subgroup.map(found -> version.limits().mean(found.size())));
    return new ChartPoint(
        row.takenAt(),
        row.key().roll(),
        row.key().sample(),
        number(subgroup.map(Subgroup::mean)),
        number(subgroup.filter(found -> found.size() > 1).map(Subgroup::range)),
        number(band.map(Band::lower)),
        number(band.map(Band::centre)),
        number(band.map(Band::upper)),
        signals.stream()
            .map(
                signal ->
                    signal.chart().word() + ":" + signal.test().word() + ":" + signal.side().word())
            .toList());
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
  }

  String word() {
    return week.word();
  }

  String wordBefore() {
    return week.minus(1).word();
  }

  /** Weeks before this one but for the last of them, oldest first. */
  List<TrendWeek> before(Characteristic characteristic, int weeks, ReportSettings settings) {
    List<TrendWeek> trend = new ArrayList<>();
    SpecTimes asked = times.specs(characteristic);
    for (int back = weeks; back > 1; back--) {
      ReportWeek of = week.minus(back);
      Week found = week(characteristic, of);
      int asking = asked.indexAt(found.last().orElse(of.from()));
      Sum sum = found.sum(moment -> asked.indexAt(moment) == asking);
      trend.add(trendWeek(of, sum, asked.all().get(asking).individual(), settings));
    }
    return trend;
  }

  private static TrendWeek trendWeek(
      ReportWeek of, Sum sum, SpecLimits spec, ReportSettings settings) {
    OptionalDouble mean = sum.figures.mean();
    OptionalDouble sigma = sum.figures.sigmaOverall();
    OptionalDouble ppk = OptionalDouble.empty();
    OptionalDouble atLeast = OptionalDouble.empty();
    EffectiveSize size = EffectiveSize.of(sum.figures.readings(), sum.lag1());
    boolean isEnough =
        SampleSizeWarning.of((long) size.forVariance())
            .filter(SampleSizeWarning.TOO_FEW::equals)
            .isEmpty();
    if (isEnough && mean.isPresent() && sigma.isPresent() && sigma.getAsDouble() > 0) {
      Indices indices = Indices.of(mean.getAsDouble(), sigma.getAsDouble(), spec);
      ppk = indices.cpk();
      atLeast =
          new IndexConfidence(settings.asked().confidence(), size)
              .cpk(indices, CpkMethod.NORMAL_APPROXIMATION)
              .map(limits -> OptionalDouble.of(limits.atLeast()))
              .orElse(OptionalDouble.empty());
    }
    return new TrendWeek(
        of.word(),
        sum.neighbours.count(),
        mean,
        sigma,
        ppk,
        atLeast,
        sum.judged > 0 && sum.steadiness().stable(),
        Optional.of(Bounds.of(spec)));
  }
}
