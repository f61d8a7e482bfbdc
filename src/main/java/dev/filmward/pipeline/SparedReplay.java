package dev.filmward.pipeline;

import dev.filmward.alarm.AlarmRun.Topic;
import dev.filmward.alarm.AlarmSpan;
import dev.filmward.alarm.Excursion;
import dev.filmward.alarm.ExcursionStep;
import dev.filmward.alarm.Excursions;
import dev.filmward.alarm.SampleVerdict;
import dev.filmward.alarm.Verdict;
import dev.filmward.film.Characteristic;
import dev.filmward.pipeline.ProductionJudge.JudgedSample;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;

/** Judges a time once more and gives the excursions that began in it. Stateless. */
final class SparedReplay {
  /** A mean that is farther off opens an alarm without a second look; see {@link Verdict}. */
  private static final double AT_ONCE = 4;

  private SparedReplay() {}

  static List<Excursion> of(
      ProductionJudge judge,
      Production production,
      AlarmSpan period,
      UnaryOperator<Verdict> changed) {
    Excursions excursions = new Excursions(production.structure());
    List<Excursion> live = new ArrayList<>();
    List<Excursion> over = new ArrayList<>();
    for (JudgedSample sample : judge.judge(period.from())) {
      if (!period.contains(sample.takenAt())) {
        break;
      }
      List<Verdict> verdicts = sample.verdicts().stream().map(changed).toList();
      SampleVerdict verdict =
          new SampleVerdict(sample.key(), sample.takenAt(), verdicts, sample.verdict().line());
      for (ExcursionStep step : excursions.judge(verdict, List.copyOf(live))) {
        step.before().ifPresent(live::remove);
        (step.now().course().settledAt().isPresent() ? over : live).add(step.now());
      }
    }
    over.addAll(live);
    over.removeIf(excursion -> !excursion.raised());
    return over;
  }

  /** As if a mean far off were no reason to be quick; a reading out of specification still is. */
  static Verdict withSecondLook(Verdict verdict) {
    double zMean = Math.max(-AT_ONCE, Math.min(AT_ONCE, verdict.zMean()));
    return new Verdict(verdict.characteristic(), zMean, verdict.heard(), verdict.stakes());
  }

  /** How many of them are about a topic. */
  static int count(List<Excursion> excursions, Topic topic, Set<Characteristic> members) {
    return (int)
        excursions.stream()
            .map(Excursion::subject)
            .filter(subject -> subject.deviation() == topic.deviation())
            .filter(subject -> !Collections.disjoint(subject.members(), members))
            .count();
  }
}
