package dev.filmward.pipeline;

import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.film.Characteristic;
import dev.filmward.pipeline.LimitsProposal.PastAlarm;
import dev.filmward.pipeline.LimitsProposal.PointToLookAt;
import dev.filmward.pipeline.LimitsProposal.Proposed;
import dev.filmward.pipeline.SeriesJudge.Judged;
import dev.filmward.rule.ChosenTests;
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
  private final ChosenTests tests;

  LimitsProposer(Tables tables, Production production) {
    this.tables = tables;
    this.production = production;
    this.tests = production.tests(tables).newestAlways();
  }

  LimitsProposal propose(BaselineChoice choice) {
    LongWork.current().more(2L * production.characteristics().size());
    List<Proposed> characteristics = new ArrayList<>();
    Map<Series, List<LimitsVersion>> proposed = new HashMap<>();
    Map<Series, List<LimitsVersion>> current = new HashMap<>();
    LimitsDesk.baselines(tables, production, choice)
        .forEach(
            (characteristic, rows) -> {
              LongWork.current().goOn();
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

  private Proposed proposed(
      Characteristic characteristic, Optional<LimitsVersion> held, BaselineRows rows) {
    Optional<MeanRangeLimits> limits = rows.limits();
    return new Proposed(
        characteristic,
        held,
        limits,
        rows.taken().size(),
        rows.excluded(),
        limits.map(found -> toLookAt(found, rows, characteristic.position())).orElse(List.of()),
        BaselineWarnings.of(rows),
        rows.trust());
  }

  private List<PointToLookAt> toLookAt(MeanRangeLimits limits, BaselineRows rows, int position) {
    List<PointToLookAt> points = new ArrayList<>();
    SeriesJudge judge = new SeriesJudge(always(limits, rows), at -> tests.at(at, position), 1);
    for (Judged judged : judge.judge(rows.taken())) {
      if (!judged.now().isEmpty()) {
        points.add(new PointToLookAt(judged.row().key(), judged.row().takenAt(), judged.now()));
      }
    }
    return points;
  }

  /**
   * The alarms that limits would have raised, had they always been frozen, with the tests of now.
   */
  private List<PastAlarm> past(Map<Series, List<LimitsVersion>> limits) {
    return PastAlarms.under(
        new ProductionJudge(
            production, tables, series -> limits.getOrDefault(series, List.of()), tests),
        production);
  }

  private static List<LimitsVersion> always(MeanRangeLimits limits, BaselineRows rows) {
    Instant first = Span.always().from();
    return rows.taken().isEmpty()
        ? List.of()
        : List.of(new LimitsVersion(1, limits, rows.span(), first, List.of(PROPOSED)));
  }
}
