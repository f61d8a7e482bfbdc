package dev.filmward.pipeline;

import dev.filmward.alarm.Verdict;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Role;
import dev.filmward.film.SampleKey;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.SeriesJudge.Judged;
import dev.filmward.rule.SeriesTests;
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
import java.util.TreeMap;

/**
 * Judges what a line makes of one structure from a moment on: runs the tests of every
 * characteristic over the stored subgroups, keeps the signals, and gives the verdicts sample by
 * sample. The same whatever the pieces in which samples came.
 */
final class ProductionJudge {
  private final String line;
  private final Structure structure;
  private final Tables tables;

  ProductionJudge(String line, Structure structure, Tables tables) {
    this.line = line;
    this.structure = structure;
    this.tables = tables;
  }

  /** One sample's verdicts, in chart order. */
  record JudgedSample(long sampleId, SampleKey key, Instant takenAt, List<Verdict> verdicts) {}

  List<JudgedSample> judgeSince(Instant moment) {
    Map<FigureRow, List<Verdict>> bySample = new TreeMap<>(inTime());
    for (Characteristic characteristic : Subgrouping.layersAndTotal(structure).characteristics()) {
      for (Judged judged : judgeSeries(characteristic, moment)) {
        bySample
            .computeIfAbsent(judged.row(), row -> new ArrayList<>())
            .add(verdict(characteristic, judged));
      }
    }
    List<JudgedSample> samples = new ArrayList<>();
    bySample.forEach(
        (row, verdicts) ->
            samples.add(new JudgedSample(row.sampleId(), row.key(), row.takenAt(), verdicts)));
    return samples;
  }

  private List<Judged> judgeSeries(Characteristic characteristic, Instant moment) {
    Series series = new Series(line, structure.code(), characteristic.position());
    SeriesJudge judge = new SeriesJudge(tables.limits().of(series));
    judge.judge(tables.figures().before(series, moment, SeriesTests.WARM_UP + 1));
    Span span = Span.since(moment);
    List<Judged> judged = judge.judge(tables.figures().within(series, span));
    List<SignalTable.Stored> signals = new ArrayList<>();
    for (Judged point : judged) {
      for (var signal : point.now()) {
        signals.add(new SignalTable.Stored(point.row().sampleId(), signal));
      }
    }
    tables.signals().replace(series, span, signals);
    return judged;
  }

  private Verdict verdict(Characteristic characteristic, Judged judged) {
    return new Verdict(
        characteristic,
        judged.zMean(),
        judged.now(),
        judged.before(),
        isOutOfSpec(structure.spec(characteristic), judged.subgroup()),
        isCritical(characteristic));
  }

  private static boolean isOutOfSpec(SpecLimits spec, Subgroup subgroup) {
    return spec.excludes(subgroup.least()) || spec.excludes(subgroup.greatest());
  }

  private boolean isCritical(Characteristic characteristic) {
    return characteristic.kind() == Characteristic.Kind.TOTAL
        || structure.reported().get(characteristic.position() - 1).members().stream()
            .anyMatch(layer -> layer.role() == Role.BARRIER);
  }

  private static Comparator<FigureRow> inTime() {
    return Comparator.comparing(FigureRow::takenAt)
        .thenComparing(row -> row.key().roll())
        .thenComparing(row -> row.key().sample())
        .thenComparingLong(FigureRow::sampleId);
  }
}
