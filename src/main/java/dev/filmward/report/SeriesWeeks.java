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
import dev.filmward.film.Structure;
import dev.filmward.pipeline.PointChoice;
import dev.filmward.pipeline.SeriesFigures;
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
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

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
  private final Structure structure;
  private final ReportWeek week;

  SeriesWeeks(Tables tables, String line, Structure structure, ReportWeek week) {
    this.tables = tables;
    this.line = line;
    this.structure = structure;
    this.week = week;
  }

  /** One series in one week. */
  record Week(SeriesFigures figures, double lag1, Steadiness steadiness, List<ChartPoint> chart) {}

  Week week(Characteristic characteristic) {
    Series series = series(characteristic);
    FigureColumns columns = tables.figures().columns(series, FilmReader.span(week));
    List<LimitsVersion> limits = tables.limits().of(series);
    Map<Long, List<Signal>> signals = signals(series, week);
    Sum sum = new Sum();
    for (int i = 0; i < columns.count(); i++) {
      sum.add(columns, i, limits, signals);
    }
    return new Week(sum.figures, sum.lag1(), sum.steadiness(), chart(columns, limits, signals));
  }

  private Series series(Characteristic characteristic) {
    return new Series(line, structure.code(), characteristic.position());
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
      if (columns.size(i) == 0) {
        return;
      }
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
    return Instant.EPOCH.plus(columns.takenAtMicros(i), ChronoUnit.MICROS);
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
    Series series = series(characteristic);
    List<LimitsVersion> limits = tables.limits().of(series);
    for (int back = weeks; back > 1; back--) {
      ReportWeek of = week.minus(back);
      FigureColumns columns = tables.figures().columns(series, FilmReader.span(of));
      Map<Long, List<Signal>> signals = columns.count() == 0 ? Map.of() : signals(series, of);
      Sum sum = new Sum();
      for (int i = 0; i < columns.count(); i++) {
        sum.add(columns, i, limits, signals);
      }
      trend.add(trendWeek(of, sum, structure.spec(characteristic), settings));
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
        sum.judged > 0 && sum.steadiness().stable());
  }
}
