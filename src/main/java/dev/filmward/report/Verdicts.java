package dev.filmward.report;

import dev.filmward.report.IndexWeek.Kind;
import dev.filmward.report.IndexWeek.Standing;
import dev.filmward.report.IndexWeek.Why;
import java.util.List;
import java.util.function.Predicate;

/**
 * Takes the characteristics of a film's week, gives the verdict: the worst that is true of any with
 * a specification.
 */
final class Verdicts {
  private Verdicts() {}

  static Verdict of(List<CharacteristicWeek> weeks) {
    List<IndexWeek> judged =
        weeks.stream()
            .filter(each -> !each.isShare() && !each.individual().isEmpty())
            .map(CharacteristicWeek::index)
            .toList();
    if (judged.isEmpty()) {
      return Verdict.NO_SPECIFICATION;
    }
    if (judged.stream().allMatch(index -> index.why() == Why.NO_DATA)) {
      return Verdict.NO_DATA;
    }
    if (any(judged, index -> index.standing() == Standing.BELOW) || wasBelow(weeks)) {
      return Verdict.BELOW;
    }
    if (any(judged, index -> index.why() == Why.UNSTABLE)) {
      return Verdict.NOT_STABLE;
    }
    if (any(judged, index -> index.why() == Why.TOO_FEW || index.why() == Why.NO_DATA)) {
      return Verdict.TOO_LITTLE_DATA;
    }
    if (any(judged, index -> index.why() == Why.NO_LIMITS)) {
      return Verdict.NOT_JUDGED;
    }
    return any(
            judged, index -> index.kind() != Kind.CAPABILITY || index.standing() != Standing.SHOWN)
        ? Verdict.NOT_SHOWN
        : Verdict.CAPABLE;
  }

  /** A specification that was changed within the week does not undo what was made before. */
  private static boolean wasBelow(List<CharacteristicWeek> weeks) {
    return weeks.stream()
        .flatMap(each -> each.earlier().stream())
        .anyMatch(earlier -> earlier.index().standing() == Standing.BELOW);
  }

  private static boolean any(List<IndexWeek> all, Predicate<IndexWeek> test) {
    return all.stream().anyMatch(test);
  }
}
