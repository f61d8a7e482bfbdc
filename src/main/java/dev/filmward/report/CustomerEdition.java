package dev.filmward.report;

import dev.filmward.report.CharacteristicWeek.GiveawayWeek;
import dev.filmward.report.FilmWeek.Act;
import dev.filmward.report.FilmWeek.CalibrationWeek;
import dev.filmward.report.FilmWeek.GaugeWeek;
import dev.filmward.report.FilmWeek.LastStudy;
import dev.filmward.report.FilmWeek.LeftOut;
import dev.filmward.report.FilmWeek.LimitsMove;
import dev.filmward.report.FilmWeek.ScalingWeek;
import java.util.Optional;

/**
 * Takes a film's week, gives what a customer gets of it: no costs, no giveaway, no names of people
 * and no words of theirs.
 */
final class CustomerEdition {
  private static final String NOBODY = "";

  private CustomerEdition() {}

  static FilmWeek of(FilmWeek film) {
    GaugeWeek gauge = film.gauge();
    return new FilmWeek(
        film.line(),
        film.structure(),
        film.name(),
        film.plies(),
        film.verdict(),
        film.before(),
        film.characteristics().stream().map(CustomerEdition::of).toList(),
        film.alarms(),
        new GaugeWeek(
            gauge.calibrations().stream().map(CustomerEdition::of).toList(),
            gauge.flagged(),
            gauge.heldOut(),
            gauge.kinds(),
            gauge.study().map(CustomerEdition::of),
            gauge.scalings().stream().map(CustomerEdition::of).toList(),
            gauge.limitsOtherwise()),
        film.limits().stream()
            .map(move -> new LimitsMove(move.at(), NOBODY, move.version(), move.state(), NOBODY))
            .toList(),
        film.samples(),
        film.leftOut().stream().map(CustomerEdition::of).toList(),
        film.acts().stream().filter(act -> act.kind() != Act.Kind.GIVEAWAY).toList());
  }

  private static CharacteristicWeek of(CharacteristicWeek each) {
    return new CharacteristicWeek(
        each.kind(),
        each.position(),
        each.name(),
        each.individual(),
        each.average(),
        each.samples(),
        each.readings(),
        each.effective(),
        each.mean(),
        each.sigmaWithin(),
        each.sigmaOverall(),
        each.lag1(),
        each.steadiness(),
        each.index(),
        each.averages(),
        each.worstLane(),
        each.shape(),
        each.observedPpm(),
        each.expectedPpm(),
        each.bins(),
        each.chart(),
        each.lanes(),
        each.laneShare(),
        Optional.<GiveawayWeek>empty(),
        each.trend(),
        each.since(),
        each.earlier());
  }

  private static CalibrationWeek of(CalibrationWeek each) {
    return new CalibrationWeek(
        each.at(),
        NOBODY,
        each.gauge(),
        each.layer(),
        each.beforeMps(),
        each.foundMps(),
        each.uMps());
  }

  private static ScalingWeek of(ScalingWeek each) {
    return new ScalingWeek(
        each.from(),
        each.position(),
        each.layer(),
        each.version(),
        each.factor(),
        each.offsetUm(),
        each.velocityMps(),
        each.percentPerKelvin(),
        each.atC(),
        NOBODY,
        NOBODY);
  }

  private static LastStudy of(LastStudy study) {
    return new LastStudy(
        study.id(), study.gauge(), study.finishedAt(), NOBODY, NOBODY, study.layers());
  }

  private static LeftOut of(LeftOut each) {
    return new LeftOut(
        each.at(), each.roll(), each.sample(), each.kinds(), each.state(), NOBODY, NOBODY);
  }
}
