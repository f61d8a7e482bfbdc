package dev.filmward.pipeline;

import static dev.filmward.rule.SignalTest.BEYOND_LIMIT;

import dev.filmward.chart.ChartKind;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.film.Characteristic;
import dev.filmward.pipeline.LimitsProposal.PastAlarm;
import dev.filmward.pipeline.TestsPrice.Turned;
import dev.filmward.rule.AlarmDelays;
import dev.filmward.rule.ChosenTests;
import dev.filmward.rule.SeriesTests;
import dev.filmward.rule.Side;
import dev.filmward.rule.Signal;
import dev.filmward.rule.SignalTest;
import dev.filmward.rule.TestChoice;
import dev.filmward.rule.TestSet;
import dev.filmward.rule.TestsVersion;
import dev.filmward.rule.price.ChosenPrice;
import dev.filmward.rule.price.FamilyLimits;
import dev.filmward.rule.price.PriceChange.Turn;
import dev.filmward.rule.price.RunLengthBook;
import dev.filmward.rule.price.SamplingPlan;
import dev.filmward.stats.ChartConstants;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgroup;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;

/** Works out what a choice of tests costs, and changes nothing. For one transaction. */
final class TestsPricing {
  private static final int RECENT = 60;
  private static final int FEWEST = 3;
  private static final Decision ASKED = new Decision("nobody", "asked", Instant.EPOCH);

  private final Tables tables;
  private final Production production;
  private final RunLengthBook book;

  TestsPricing(Tables tables, Production production, RunLengthBook book) {
    this.tables = tables;
    this.production = production;
    this.book = book;
  }

  /** For the newest choices, some of them changed. */
  TestsPrice of(TestsChange change) {
    LongWork.current().more(production.characteristics().size());
    ChosenTests before = production.tests(tables);
    Map<Integer, TestChoice> all = TestsDesk.all(production, before, change.choices());
    AlarmDelays delays = change.delays(before.newestDelays());
    Map<Characteristic, TestChoice> choices = new TreeMap<>();
    production.characteristics().forEach(each -> choices.put(each, all.get(each.position())));
    List<TestSet> sets = choices.values().stream().map(TestChoice::alarming).toList();
    List<FigureRow> recent = tables.figures().last(total(), RECENT);
    Optional<Duration> interval = interval(recent);
    Pricing pricing =
        new Pricing(
            size(recent),
            new SamplingPlan(interval.orElse(LinePrice.SHIFT), LinePrice.SHIFT),
            book);
    return new TestsPrice(
        choices,
        pricing.size,
        interval,
        pricing.of(sets),
        pricing.of(withShares(choices)),
        pricing.changes(sets),
        family(choices.size()),
        alarms(all, delays),
        delays);
  }

  private record Pricing(int size, SamplingPlan plan, RunLengthBook book) {

    private ChosenPrice of(List<TestSet> sets) {
      LongWork.current().goOn();
      return ChosenPrice.of(sets, size, plan, book);
    }

    private List<Turned> changes(List<TestSet> sets) {
      List<Turned> changes = new ArrayList<>();
      for (SignalTest test : SignalTest.values()) {
        changes.add(change(sets, ChartKind.XBAR, test));
      }
      changes.add(change(sets, ChartKind.RANGE, BEYOND_LIMIT));
      changes.add(change(sets, ChartKind.EWMA, BEYOND_LIMIT));
      return changes;
    }

    private Turned change(List<TestSet> sets, ChartKind chart, SignalTest test) {
      Signal signal = new Signal(chart, test, Side.HIGH);
      Turn turn = sets.stream().anyMatch(set -> set.has(signal)) ? Turn.DROPPED : Turn.ADDED;
      UnaryOperator<TestSet> turned =
          set -> turn == Turn.DROPPED ? set.without(chart, test) : set.with(chart, test);
      return new Turned(chart, test, turn, of(sets.stream().map(turned).toList()));
    }
  }

  private static List<TestSet> withShares(Map<Characteristic, TestChoice> choices) {
    List<TestSet> sets = new ArrayList<>();
    choices.forEach(
        (characteristic, choice) -> {
          sets.add(choice.alarming());
          if (characteristic.kind() == Characteristic.Kind.LAYER) {
            sets.add(choice.alarming());
          }
        });
    return sets;
  }

  private static TestsPrice.Family family(int charts) {
    double aim = FamilyLimits.OF_THREE_SIGMA;
    double lambda = SeriesTests.AVERAGE.lambda();
    return new TestsPrice.Family(
        charts,
        FamilyLimits.ofPoints(charts, aim),
        FamilyLimits.ofEwma(lambda, charts, aim).reach());
  }

  private List<PastAlarm> alarms(Map<Integer, TestChoice> choices, AlarmDelays delays) {
    ChosenTests asked =
        new ChosenTests(List.of(new TestsVersion(1, choices, delays, Instant.MIN, ASKED)));
    return PastAlarms.under(
        new ProductionJudge(production, tables, this::limits, asked), production);
  }

  private List<LimitsVersion> limits(Series series) {
    return tables.limits().of(series);
  }

  private Series total() {
    return production.series(Characteristic.total());
  }

  private static Optional<Duration> interval(List<FigureRow> rows) {
    List<Duration> gaps = new ArrayList<>();
    for (int i = 1; i < rows.size(); i++) {
      gaps.add(Duration.between(rows.get(i - 1).takenAt(), rows.get(i).takenAt()));
    }
    gaps.sort(null);
    return rows.size() < FEWEST
        ? Optional.empty()
        : Optional.of(gaps.get(gaps.size() / 2)).filter(gap -> !gap.isZero());
  }

  private static int size(List<FigureRow> rows) {
    int largest =
        rows.stream()
            .map(FigureRow::subgroup)
            .flatMap(Optional::stream)
            .mapToInt(Subgroup::size)
            .max()
            .orElse(1);
    return Math.min(largest, ChartConstants.LARGEST_SIZE);
  }
}
