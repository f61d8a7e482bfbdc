package dev.filmward.pipeline;

import dev.filmward.alarm.Heard;
import dev.filmward.alarm.LineMoment;
import dev.filmward.alarm.SampleVerdict;
import dev.filmward.alarm.Stakes;
import dev.filmward.alarm.Verdict;
import dev.filmward.chart.ChartKind;
import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Role;
import dev.filmward.film.SampleKey;
import dev.filmward.film.SpecLimits;
import dev.filmward.pipeline.SeriesJudge.Judged;
import dev.filmward.rule.ChosenTests;
import dev.filmward.rule.Signal;
import dev.filmward.rule.SignalTest;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SignalTable;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgroup;
import dev.filmward.subgroup.Subgrouping;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import java.util.function.Function;

/**
 * Judges what a line makes of one structure from a moment on: runs the tests of every
 * characteristic over the stored subgroups and gives the verdicts sample by sample. The same
 * whatever the pieces in which samples came. For one thread, within one transaction.
 */
final class ProductionJudge {
  private final Production production;
  private final Tables tables;
  private final Function<Series, List<LimitsVersion>> limits;
  private final ChosenTests tests;

  /**
   * Judges under any limits and tests.
   *
   * @param limits versions for a series, first to last
   */
  ProductionJudge(
      Production production,
      Tables tables,
      Function<Series, List<LimitsVersion>> limits,
      ChosenTests tests) {
    this.production = production;
    this.tables = tables;
    this.limits = limits;
    this.tests = tests;
  }

  /** Judges under the limits and tests that are kept. */
  static ProductionJudge asKept(Production production, Tables tables) {
    return new ProductionJudge(production, tables, tables.limits()::of, production.tests(tables));
  }

  /** One sample's verdicts, in chart order. */
  record JudgedSample(long sampleId, SampleVerdict verdict) {
    SampleKey key() {
      return verdict.sample();
    }

    Instant takenAt() {
      return verdict.takenAt();
    }

    List<Verdict> verdicts() {
      return verdict.verdicts();
    }
  }

  /** Judges, and keeps the signals in the place of what was there from that moment on. */
  List<JudgedSample> judgeAndKeep(Instant moment) {
    return judge(
        moment,
        (series, judged) -> tables.signals().replace(series, Span.since(moment), placed(judged)));
  }

  /** Judges, and keeps nothing. */
  List<JudgedSample> judge(Instant moment) {
    return judge(moment, (series, judged) -> {});
  }

  private List<JudgedSample> judge(Instant moment, BiConsumer<Series, List<Judged>> keeper) {
    Map<FigureRow, List<Verdict>> bySample = new TreeMap<>(inTime());
    for (Characteristic characteristic :
        Subgrouping.layersAndTotal(production.structure()).characteristics()) {
      LongWork.current().goOn();
      Series series = production.series(characteristic);
      Points points = judge(series, moment);
      keeper.accept(series, points.judged());
      Foresight foresight = new Foresight(production.structure().spec(characteristic));
      points.earlier().forEach(foresight::add);
      for (Judged point : points.judged()) {
        foresight.add(point);
        bySample
            .computeIfAbsent(point.row(), row -> new ArrayList<>())
            .add(verdict(characteristic, point, foresight));
      }
      LongWork.current().did(1);
    }
    return bySample.isEmpty() ? List.of() : samples(bySample, moment);
  }

  private List<JudgedSample> samples(Map<FigureRow, List<Verdict>> bySample, Instant moment) {
    ModesInTime modes = ModesInTime.since(tables, production, moment);
    List<JudgedSample> samples = new ArrayList<>();
    bySample.forEach(
        (row, verdicts) -> {
          LineMoment line = modes.at(row.takenAt());
          SampleVerdict verdict = new SampleVerdict(row.key(), row.takenAt(), verdicts, line);
          samples.add(new JudgedSample(row.sampleId(), verdict));
        });
    return samples;
  }

  /** Points from a moment on, and some of those before it. */
  private record Points(List<Judged> earlier, List<Judged> judged) {}

  private Points judge(Series series, Instant moment) {
    List<LimitsVersion> versions = limits.apply(series);
    if (versions.isEmpty()) {
      return new Points(List.of(), List.of());
    }
    int position = series.position();
    int back = tests.earlierSamples();
    SeriesJudge judge = new SeriesJudge(versions, takenAt -> tests.at(takenAt, position), back + 1);
    int warmUp = Math.max(tests.warmUp(position) + back, Foresight.MEANS);
    List<Judged> earlier = judge.judge(tables.figures().before(series, moment, warmUp));
    return new Points(earlier, judge.judge(tables.figures().within(series, Span.since(moment))));
  }

  private static List<SignalTable.Placed> placed(List<Judged> judged) {
    List<SignalTable.Placed> signals = new ArrayList<>();
    for (Judged point : judged) {
      point.now().stream()
          .map(signal -> new SignalTable.Stored(point.row().sampleId(), signal))
          .map(stored -> new SignalTable.Placed(stored, point.row().takenAt()))
          .forEach(signals::add);
    }
    return signals;
  }

  private Verdict verdict(Characteristic characteristic, Judged judged, Foresight foresight) {
    Instant takenAt = judged.row().takenAt();
    List<List<Signal>> recent =
        judged.recent().stream().map(signals -> heard(judged, signals)).toList();
    return new Verdict(
        characteristic,
        judged.zMean(),
        new Heard(recent, tests.delaysAt(takenAt)),
        new Stakes(
            isOutOfSpec(production.structure().spec(characteristic), judged.subgroup()),
            isCritical(characteristic),
            recent.get(0).isEmpty() ? Optional.empty() : foresight.timeToSpec(takenAt)));
  }

  /** Under provisional limits only a mean beyond them counts for an alarm. */
  private static List<Signal> heard(Judged judged, List<Signal> signals) {
    boolean all = judged.limits().stateAt(judged.row().takenAt()) != LimitsState.PROVISIONAL;
    return signals.stream().filter(signal -> all || isMeanBeyondLimit(signal)).toList();
  }

  private static boolean isMeanBeyondLimit(Signal signal) {
    return signal.chart() == ChartKind.XBAR && signal.test() == SignalTest.BEYOND_LIMIT;
  }

  private static boolean isOutOfSpec(SpecLimits spec, Subgroup subgroup) {
    return spec.excludes(subgroup.least()) || spec.excludes(subgroup.greatest());
  }

  private boolean isCritical(Characteristic characteristic) {
    return characteristic.kind() == Characteristic.Kind.TOTAL
        || production.structure().reported().get(characteristic.position() - 1).members().stream()
            .anyMatch(layer -> layer.role() == Role.BARRIER);
  }

  private static Comparator<FigureRow> inTime() {
    return Comparator.comparing(FigureRow::takenAt)
        .thenComparing(row -> row.key().roll())
        .thenComparing(row -> row.key().sample())
        .thenComparingLong(FigureRow::sampleId);
  }
}
