package dev.filmward.report.paper;

import dev.filmward.report.CharacteristicWeek;
import dev.filmward.report.FilmWeek;
import dev.filmward.report.IndexWeek;
import dev.filmward.report.Verdict;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Why a film has its verdict: a sentence about the characteristic that decides. Pure. */
final class Reasons {
  private Reasons() {}

  static String of(FilmWeek film, Wording wording) {
    return switch (film.verdict()) {
      case CAPABLE, NOT_SHOWN, BELOW -> byIndex(film, wording);
      case NOT_STABLE -> bySignals(film, wording);
      case NOT_JUDGED, TOO_LITTLE_DATA, NO_SPECIFICATION, NO_DATA ->
          wording.texts().say("reason." + Wording.code(film.verdict()));
    };
  }

  /** The lowest Ppk; where only an earlier specification was not met, by that one. */
  private static String byIndex(FilmWeek film, Wording wording) {
    boolean isOfNow =
        film.verdict() != Verdict.BELOW
            || film.characteristics().stream()
                .anyMatch(each -> each.index().standing() == IndexWeek.Standing.BELOW);
    return isOfNow ? byWeakest(film, wording) : byEarlier(film, wording);
  }

  private static String byEarlier(FilmWeek film, Wording wording) {
    for (CharacteristicWeek each : film.characteristics()) {
      for (CharacteristicWeek.EarlierSpec earlier : each.earlier()) {
        if (earlier.index().standing() == IndexWeek.Standing.BELOW) {
          return wording
              .texts()
              .say(
                  "reason.below-earlier",
                  "name",
                  wording.characteristic(each),
                  "ppk",
                  wording.index(earlier.index().ppk()),
                  "required",
                  wording.required());
        }
      }
    }
    return "";
  }

  private static String byWeakest(FilmWeek film, Wording wording) {
    Optional<CharacteristicWeek> weakest =
        FrontPage.indexed(film).stream()
            .min(Comparator.comparingDouble(each -> each.index().ppk().orElseThrow()));
    String key = "reason." + Wording.code(film.verdict());
    return weakest
        .map(
            each ->
                wording
                    .texts()
                    .say(
                        key,
                        "name",
                        wording.characteristic(each),
                        "ppk",
                        wording.index(each.index().ppk()),
                        "atLeast",
                        wording.index(each.index().atLeast()),
                        "required",
                        wording.required()))
        .orElse("");
  }

  private static String bySignals(FilmWeek film, Wording wording) {
    List<CharacteristicWeek> unstable =
        film.characteristics().stream()
            .filter(each -> each.index().why() == IndexWeek.Why.UNSTABLE)
            .toList();
    Optional<CharacteristicWeek> most =
        (unstable.isEmpty() ? film.characteristics() : unstable)
            .stream().max(Comparator.comparingLong(each -> each.steadiness().signalled()));
    return most.map(
            each ->
                wording
                    .texts()
                    .say(
                        "reason." + Wording.code(Verdict.NOT_STABLE),
                        "name",
                        wording.characteristic(each),
                        "signalled",
                        wording.texts().number((double) each.steadiness().signalled(), 0),
                        "judged",
                        wording.texts().number((double) each.steadiness().judged(), 0)))
        .orElse("");
  }
}
