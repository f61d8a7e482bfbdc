package dev.filmward.pipeline;

import dev.filmward.alarm.AlarmTitle;
import dev.filmward.alarm.Excursion;
import dev.filmward.alarm.ExcursionStep;
import dev.filmward.alarm.Excursions;
import dev.filmward.pipeline.LimitsProposal.PastAlarm;
import dev.filmward.pipeline.ProductionJudge.JudgedSample;
import dev.filmward.store.FigureTable.Span;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * The alarms that limits and tests would have raised on all that is stored, without those of times
 * at which the line was not running. Stateless.
 */
final class PastAlarms {
  private PastAlarms() {}

  /** In the order of their beginning. */
  static List<PastAlarm> under(ProductionJudge judge, Production production) {
    return under(judge, production, Span.always().from());
  }

  /** The same of samples taken from a moment on, as if nothing had gone on before. */
  static List<PastAlarm> under(ProductionJudge judge, Production production, Instant since) {
    Excursions excursions = new Excursions(production.structure());
    List<Excursion> known = new ArrayList<>();
    for (JudgedSample sample : judge.judge(since)) {
      for (ExcursionStep step : excursions.judge(sample.verdict(), List.copyOf(known))) {
        step.before().ifPresent(known::remove);
        known.add(step.now());
      }
    }
    return known.stream()
        .filter(Excursion::raised)
        .map(excursion -> past(excursion, production))
        .sorted((a, b) -> a.openedAt().compareTo(b.openedAt()))
        .toList();
  }

  private static PastAlarm past(Excursion excursion, Production production) {
    return new PastAlarm(
        AlarmTitle.of(excursion.subject(), production.structure()),
        excursion.course().first(),
        excursion.course().openedAt());
  }
}
