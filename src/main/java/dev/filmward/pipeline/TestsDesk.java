package dev.filmward.pipeline;

import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.film.Characteristic;
import dev.filmward.rule.ChosenTests;
import dev.filmward.rule.TestChoice;
import dev.filmward.rule.TestsVersion;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.Tables;
import java.util.Map;
import java.util.TreeMap;

/**
 * Changes which tests are shown and raise alarms, because a person decides so. A choice holds from
 * the next sample on: what was judged before stays judged, and a sample that comes late is judged
 * by the choice of its own time. Stateless.
 */
final class TestsDesk {
  private TestsDesk() {}

  /**
   * Adds a version.
   *
   * @param change the other characteristics and tests keep theirs
   * @throws IllegalArgumentException if a position is not charted
   */
  static TestsVersion choose(
      Tables tables, Production production, TestsChange change, Decision decision) {
    ChosenTests before = production.tests(tables);
    TestsVersion version =
        new TestsVersion(
            before.latest().map(TestsVersion::version).orElse(0) + 1,
            all(production, before, change.choices()),
            change.delays(before.newestDelays()),
            production.next(tables).orElse(Span.always().from()),
            decision);
    tables.tests().add(production.line(), production.structure().code(), version);
    return version;
  }

  /** The newest choices of all characteristics, some of them changed. */
  static Map<Integer, TestChoice> all(
      Production production, ChosenTests before, Map<Integer, TestChoice> changed) {
    Map<Integer, TestChoice> all = new TreeMap<>();
    for (Characteristic each : production.characteristics()) {
      all.put(each.position(), before.newest(each.position()));
    }
    changed.forEach(
        (position, choice) -> {
          if (all.put(position, choice) == null) {
            throw new IllegalArgumentException(
                "position "
                    + position
                    + " is not charted: "
                    + production.structure().code()
                    + " has layers 1 to "
                    + production.structure().reported().size()
                    + " and 0, the total");
          }
        });
    return all;
  }
}
