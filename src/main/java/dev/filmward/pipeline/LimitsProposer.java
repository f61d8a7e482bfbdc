package dev.filmward.pipeline;

import dev.filmward.alarm.AlarmTitle;
import dev.filmward.alarm.Excursion;
import dev.filmward.alarm.ExcursionStep;
import dev.filmward.alarm.Excursions;
import dev.filmward.alarm.SampleVerdict;
import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.film.Characteristic;
import dev.filmward.pipeline.LimitsProposal.PastAlarm;
import dev.filmward.pipeline.LimitsProposal.PointToLookAt;
import dev.filmward.pipeline.LimitsProposal.Proposed;
import dev.filmward.pipeline.ProductionJudge.JudgedSample;
import dev.filmward.pipeline.SeriesJudge.Judged;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Works out what a choice of baseline would give, and changes nothing. For one transaction. */
final class LimitsProposer {
  private static final StateChange PROPOSED =
      new StateChange(LimitsState.TRIAL, new Decision("nobody", "proposed", Instant.EPOCH));

  private final Tables tables;
  private final Production production;

  LimitsProposer(Tables tables, Production production) {
    this.tables = tables;
    this.production = production;
  }

  LimitsProposal propose(BaselineChoice choice) {
    List<Proposed> characteristics = new ArrayList<>();
    Map<Series, List<LimitsVersion>> proposed = new HashMap<>();
    Map<Series, List<LimitsVersion>> current = new HashMap<>();
    LimitsDesk.baselines(tables, production, choice)
        .forEach(
            (characteristic, rows) -> {
              Series series = production.series(characteristic);
              Optional<LimitsVersion> held = newest(tables.limits().of(series));
              held.ifPresent(version -> current.put(series, always(version.limits(), rows)));
              rows.limits().ifPresent(limits -> proposed.put(series, always(limits, rows)));
              characteristics.add(proposed(characteristic, held, rows));
            });
    return new LimitsProposal(characteristics, past(current), past(proposed));
  }

  private static Optional<LimitsVersion> newest(List<LimitsVersion> versions) {
    return versions.isEmpty() ? Optional.empty() : Optional.of(versions.get(versions.size() - 1));
  }

  private static Proposed proposed(
      Characteristic characteristic, Optional<LimitsVersion> held, BaselineRows rows) {
    Optional<MeanRangeLimits> limits = rows.limits();
    return new Proposed(
        characteristic,
        held,
        limits,
        rows.taken().size(),
        rows.excluded(),
        limits.map(found -> toLookAt(found, rows)).orElse(List.of()),
        BaselineWarnings.of(rows));
  }

  private static List<PointToLookAt> toLookAt(MeanRangeLimits limits, BaselineRows rows) {
    List<PointToLookAt> points = new ArrayList<>();
    for (Judged judged : new SeriesJudge(always(limits, rows)).judge(rows.taken())) {
      if (!judged.now().isEmpty()) {
        points.add(new PointToLookAt(judged.row().key(), judged.row().takenAt(), judged.now()));
      }
    }
    return points;
  }

  /** The alarms that limits would have raised, had they always been in force and frozen. */
  private List<PastAlarm> past(Map<Series, List<LimitsVersion>> limits) {
    ProductionJudge judge =
        new ProductionJudge(production, tables, series -> limits.getOrDefault(series, List.of()));
    Excursions excursions = new Excursions(production.structure());
    List<Excursion> known = new ArrayList<>();
    for (JudgedSample sample : judge.judge(Span.always().from())) {
      SampleVerdict verdict = new SampleVerdict(sample.key(), sample.takenAt(), sample.verdicts());
      for (ExcursionStep step : excursions.judge(verdict, List.copyOf(known))) {
        step.before().ifPresent(known::remove);
        known.add(step.now());
      }
    }
    return known.stream()
        .map(
            excursion ->
                new PastAlarm(
                    AlarmTitle.of(excursion.subject(), production.structure()),
                    excursion.course().first(),
                    excursion.course().openedAt()))
        .sorted((a, b) -> a.openedAt().compareTo(b.openedAt()))
        .toList();
  }

  private static List<LimitsVersion> always(MeanRangeLimits limits, BaselineRows rows) {
    Instant first = Span.always().from();
    return rows.taken().isEmpty()
        ? List.of()
        : List.of(new LimitsVersion(1, limits, rows.span(), first, List.of(PROPOSED)));
  }
}
