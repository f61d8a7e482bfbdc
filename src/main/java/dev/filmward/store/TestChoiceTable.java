package dev.filmward.store;

import dev.filmward.chart.ChartKind;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.rule.AlarmDelays;
import dev.filmward.rule.AlarmDelays.Delay;
import dev.filmward.rule.ChartTest;
import dev.filmward.rule.ChosenTests;
import dev.filmward.rule.SignalTest;
import dev.filmward.rule.TestChoice;
import dev.filmward.rule.TestSet;
import dev.filmward.rule.TestsVersion;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;

/** Which tests are shown and raise alarms; versions are added and never changed. */
public final class TestChoiceTable {
  private final Handle handle;

  TestChoiceTable(Handle handle) {
    this.handle = handle;
  }

  /** All versions for what a line makes of a structure. */
  public ChosenTests of(String line, String structure) {
    Map<Integer, Map<Integer, TestChoice>> choices = choices(line, structure);
    Map<Integer, Map<ChartTest, Delay>> delays = delays(line, structure);
    return new ChosenTests(
        handle
            .createQuery(
                "SELECT * FROM tests_version WHERE line = :line AND structure = :structure"
                    + " ORDER BY version")
            .bind("line", line)
            .bind("structure", structure)
            .map(
                (row, context) ->
                    new TestsVersion(
                        row.getInt("version"),
                        choices.getOrDefault(row.getInt("version"), Map.of()),
                        new AlarmDelays(delays.getOrDefault(row.getInt("version"), Map.of())),
                        Times.toInstant(row.getLong("holds_from")),
                        new Decision(
                            row.getString("author"),
                            row.getString("reason"),
                            Times.toInstant(row.getLong("decided_at")))))
            .list());
  }

  public void add(String line, String structure, TestsVersion version) {
    handle
        .createUpdate(
            "INSERT INTO tests_version (line, structure, version, holds_from, author, reason,"
                + " decided_at)"
                + " VALUES (:line, :structure, :version, :holdsFrom, :author, :reason, :at)")
        .bind("line", line)
        .bind("structure", structure)
        .bind("version", version.version())
        .bind("holdsFrom", Times.toMicros(version.holdsFrom()))
        .bind("author", version.decision().author())
        .bind("reason", version.decision().reason())
        .bind("at", Times.toMicros(version.decision().at()))
        .execute();
    version
        .choices()
        .forEach(
            (position, choice) ->
                handle
                    .createUpdate(
                        "INSERT INTO tests_choice (line, structure, version, position, shown,"
                            + " alarming) VALUES (:line, :structure, :version, :position, :shown,"
                            + " :alarming)")
                    .bind("line", line)
                    .bind("structure", structure)
                    .bind("version", version.version())
                    .bind("position", position)
                    .bind("shown", words(choice.shown()))
                    .bind("alarming", words(choice.alarming()))
                    .execute());
    version
        .delays()
        .delays()
        .forEach(
            (test, delay) ->
                handle
                    .createUpdate(
                        "INSERT INTO tests_delay (line, structure, version, test, opens_after,"
                            + " returns_after) VALUES (:line, :structure, :version, :test, :opens,"
                            + " :returns)")
                    .bind("line", line)
                    .bind("structure", structure)
                    .bind("version", version.version())
                    .bind("test", test.word())
                    .bind("opens", delay.opensAfter())
                    .bind("returns", delay.returnsAfter())
                    .execute());
  }

  private Map<Integer, Map<ChartTest, Delay>> delays(String line, String structure) {
    Map<Integer, Map<ChartTest, Delay>> delays = new TreeMap<>();
    handle
        .createQuery("SELECT * FROM tests_delay WHERE line = :line AND structure = :structure")
        .bind("line", line)
        .bind("structure", structure)
        .map(
            (row, context) ->
                delays
                    .computeIfAbsent(row.getInt("version"), version -> new HashMap<>())
                    .put(
                        ChartTest.fromWord(row.getString("test")),
                        new Delay(row.getInt("opens_after"), row.getInt("returns_after"))))
        .list();
    return delays;
  }

  private Map<Integer, Map<Integer, TestChoice>> choices(String line, String structure) {
    Map<Integer, Map<Integer, TestChoice>> choices = new TreeMap<>();
    handle
        .createQuery("SELECT * FROM tests_choice WHERE line = :line AND structure = :structure")
        .bind("line", line)
        .bind("structure", structure)
        .map(
            (row, context) ->
                choices
                    .computeIfAbsent(row.getInt("version"), version -> new TreeMap<>())
                    .put(
                        row.getInt("position"),
                        new TestChoice(
                            tests(row.getString("shown")), tests(row.getString("alarming")))))
        .list();
    return choices;
  }

  private static String words(TestSet tests) {
    List<String> words = new ArrayList<>();
    tests.orderedOnMeans().forEach(test -> words.add(word(ChartKind.XBAR, test)));
    tests.onSpread().forEach(test -> words.add(word(ChartKind.RANGE, test)));
    tests.onAverage().forEach(test -> words.add(word(ChartKind.EWMA, test)));
    return String.join(" ", words);
  }

  private static String word(ChartKind chart, SignalTest test) {
    return new ChartTest(chart, test).word();
  }

  private static TestSet tests(String words) {
    TestSet tests = new TestSet(Set.of(), Set.of());
    for (String word : words.isEmpty() ? List.<String>of() : List.of(words.split(" ", -1))) {
      ChartTest test = ChartTest.fromWord(word);
      tests = tests.with(test.chart(), test.test());
    }
    return tests;
  }
}
