package dev.filmward.pipeline;

import dev.filmward.alarm.AlarmRun;
import dev.filmward.alarm.AlarmRun.Topic;
import dev.filmward.alarm.AlarmSpan;
import dev.filmward.alarm.Deviation;
import dev.filmward.alarm.Excursion;
import dev.filmward.alarm.Spared;
import dev.filmward.alarm.Verdict;
import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.film.Characteristic;
import dev.filmward.pipeline.SparedAlarms.Option;
import dev.filmward.pipeline.SparedAlarms.Setting;
import dev.filmward.rule.ChosenTests;
import dev.filmward.rule.SignalTest;
import dev.filmward.rule.TestChoice;
import dev.filmward.rule.TestSet;
import dev.filmward.rule.TestsVersion;
import dev.filmward.rule.price.ChosenPrice;
import dev.filmward.rule.price.RunLengthBook;
import dev.filmward.rule.price.SamplingPlan;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.Tables;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/**
 * Works out which settings would have spared the most frequent alarms, and changes nothing: some by
 * the alarms alone, some by judging the time once more. Thread-safe.
 */
public final class SparedReader {
  private static final int TOPICS = 10;
  private static final int BASELINE = 100;
  private static final Duration SHELF = Duration.ofHours(8);
  private static final Decision ASKED = new Decision("nobody", "asked", Instant.EPOCH);
  private static final SamplingPlan ANY = new SamplingPlan(Duration.ofHours(1), SHELF);

  private final Plant plant;
  private final RunLengthBook book = new RunLengthBook();

  public SparedReader(Plant plant) {
    this.plant = plant;
  }

  /** For the topics with the most alarms, the first of them first. */
  public List<SparedAlarms> read(AlarmSpan period, String line) {
    return plant.store().read(tables -> read(tables, period, line));
  }

  private List<SparedAlarms> read(Tables tables, AlarmSpan period, String line) {
    AlarmRuns reader = new AlarmRuns(tables, plant.structures());
    Map<Topic, List<AlarmRun>> byTopic =
        reader.read(period, line).stream()
            .filter(run -> period.contains(run.raisedAt()))
            .collect(Collectors.groupingBy(AlarmRun::topic));
    Map<Production, Replays> replays = new HashMap<>();
    List<SparedAlarms> spared = new ArrayList<>();
    byTopic.entrySet().stream()
        .sorted(
            Map.Entry.<Topic, List<AlarmRun>>comparingByValue(
                    (a, b) -> Integer.compare(b.size(), a.size()))
                .thenComparing(entry -> entry.getKey().toString()))
        .limit(TOPICS)
        .forEach(
            entry -> {
              List<Option> options = byAlarms(entry.getValue());
              production(entry.getKey())
                  .map(made -> replays.computeIfAbsent(made, any -> replays(tables, any, period)))
                  .ifPresent(
                      all ->
                          options.addAll(
                              all.options(entry.getKey(), reader.members(entry.getKey()))));
              spared.add(new SparedAlarms(entry.getKey(), entry.getValue().size(), options));
            });
    return spared;
  }

  private Optional<Production> production(Topic topic) {
    return plant
        .structures()
        .find(topic.structure())
        .map(structure -> new Production(topic.line(), structure));
  }

  private static List<Option> byAlarms(List<AlarmRun> runs) {
    List<Option> options = new ArrayList<>();
    options.add(option(Setting.ONE_SAMPLE_MORE, runs.size(), Spared.byOneSampleMore(runs)));
    options.add(option(Setting.SHELVING, runs.size(), Spared.byShelving(runs, SHELF)));
    return options;
  }

  private static Option option(Setting setting, int of, int left) {
    return new Option(setting, of, left, OptionalDouble.empty(), OptionalDouble.empty());
  }

  /** What a production would have raised under each setting. */
  private final class Replays {
    private final Map<Integer, TestChoice> choices;
    private final List<Excursion> asKept;
    private final Map<Setting, List<Excursion>> changed;

    private Replays(
        Map<Integer, TestChoice> choices,
        List<Excursion> asKept,
        Map<Setting, List<Excursion>> changed) {
      this.choices = choices;
      this.asKept = asKept;
      this.changed = changed;
    }

    private List<Option> options(Topic topic, Set<Characteristic> members) {
      int of = SparedReplay.count(asKept, topic, members);
      List<Option> options = new ArrayList<>();
      changed.forEach(
          (setting, excursions) -> {
            int left = SparedReplay.count(excursions, topic, members);
            boolean priced = setting == Setting.WITHOUT_RUNS && isOfLevel(topic.deviation());
            options.add(
                new Option(
                    setting,
                    of,
                    left,
                    priced ? toSee(members, TestChoice::alarming) : OptionalDouble.empty(),
                    priced
                        ? toSee(members, choice -> withoutRuns(choice).alarming())
                        : OptionalDouble.empty()));
          });
      return options;
    }

    private OptionalDouble toSee(Set<Characteristic> members, Function<TestChoice, TestSet> tests) {
      List<TestSet> sets =
          members.stream()
              .map(member -> choices.getOrDefault(member.position(), TestChoice.STANDARD))
              .map(tests)
              .toList();
      double samples = ChosenPrice.of(sets, 1, ANY, book).line().samplesToSeeOneSigma();
      return Double.isFinite(samples) ? OptionalDouble.of(samples) : OptionalDouble.empty();
    }
  }

  private static boolean isOfLevel(Deviation deviation) {
    return deviation == Deviation.THICKER || deviation == Deviation.THINNER;
  }

  private Replays replays(Tables tables, Production production, AlarmSpan period) {
    ChosenTests kept = production.tests(tables);
    Map<Integer, TestChoice> choices = TestsDesk.all(production, kept, Map.of());
    ProductionJudge asKept = ProductionJudge.asKept(production, tables);
    Map<Setting, List<Excursion>> changed = new TreeMap<>();
    Map<Integer, TestChoice> calm = new TreeMap<>();
    choices.forEach((position, choice) -> calm.put(position, withoutRuns(choice)));
    ChosenTests withoutRuns =
        new ChosenTests(
            List.of(new TestsVersion(1, calm, kept.newestDelays(), Instant.MIN, ASKED)));
    changed.put(
        Setting.WITHOUT_RUNS,
        SparedReplay.of(
            new ProductionJudge(production, tables, tables.limits()::of, withoutRuns),
            production,
            period,
            UnaryOperator.identity()));
    changed.put(
        Setting.WIDER_SECOND_LOOK,
        SparedReplay.of(asKept, production, period, SparedReplay::withSecondLook));
    Map<Series, List<LimitsVersion>> limits = newLimits(tables, production);
    if (!limits.isEmpty()) {
      ProductionJudge judge =
          new ProductionJudge(
              production, tables, series -> limits.getOrDefault(series, List.of()), kept);
      changed.put(
          Setting.NEW_LIMITS, SparedReplay.of(judge, production, period, UnaryOperator.identity()));
    }
    List<Excursion> now =
        SparedReplay.of(asKept, production, period, UnaryOperator.<Verdict>identity());
    return new Replays(choices, now, changed);
  }

  private static TestChoice withoutRuns(TestChoice choice) {
    TestSet alarming = choice.alarming();
    Set<SignalTest> onMeans = new HashSet<>(alarming.onMeans());
    onMeans.retainAll(TestSet.LIMITS_ONLY.onMeans());
    return new TestChoice(
        choice.shown(), new TestSet(onMeans, alarming.onSpread(), alarming.onAverage()));
  }

  /** Limits from the last samples, as if they had always held; none where there are too few. */
  private static Map<Series, List<LimitsVersion>> newLimits(Tables tables, Production production) {
    StateChange asked = new StateChange(LimitsState.TRIAL, ASKED);
    Map<Series, List<LimitsVersion>> limits = new HashMap<>();
    LimitsDesk.baselines(tables, production, BaselineChoice.last(BASELINE))
        .forEach(
            (characteristic, rows) ->
                rows.limits()
                    .map(
                        found ->
                            new LimitsVersion(
                                1, found, rows.span(), Span.always().from(), List.of(asked)))
                    .ifPresent(
                        version ->
                            limits.put(production.series(characteristic), List.of(version))));
    return limits;
  }
}
