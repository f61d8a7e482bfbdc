package dev.filmward.rule.price;

import static dev.filmward.rule.SignalTest.BEYOND_LIMIT;
import static dev.filmward.rule.price.PriceChange.Turn.ADDED;
import static dev.filmward.rule.price.PriceChange.Turn.DROPPED;

import dev.filmward.chart.ChartKind;
import dev.filmward.chart.EwmaDesign;
import dev.filmward.rule.SignalTest;
import dev.filmward.rule.TestSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * The price of choices of tests for all charts of a line: expected false alarms a shift, and the
 * samples it takes to see a shift of one sigma.
 *
 * <p>Readings are taken to be normal and independent from sample to sample, limits to be those of
 * the process, and the charts to be independent of each other. Layers that move together make false
 * alarms a little rarer; autocorrelation, and limits from a short baseline, can make them many
 * times more frequent. After a false alarm the charts are taken to start afresh. Immutable.
 */
public final class PriceList {
  private static final double ONE_SIGMA = 1;

  private final ChartedLine line;
  private final SamplingPlan plan;

  public PriceList(ChartedLine line, SamplingPlan plan) {
    this.line = line;
    this.plan = plan;
  }

  /** For tests of the mean and range charts, the same for every characteristic. */
  public Price of(TestSet tests) {
    return price(
        ofMeans(tests.onMeans(), 0).orOf(ofRange(tests)), ofMeans(tests.onMeans(), ONE_SIGMA));
  }

  /** For limits of three sigma together with a moving average of the means. */
  public Price ofLimitsAnd(EwmaDesign ewma) {
    return price(
        EwmaRunLength.withPointLimit(ewma, 3, 0).orOf(ofRange(TestSet.LIMITS_ONLY)),
        EwmaRunLength.withPointLimit(ewma, 3, ONE_SIGMA));
  }

  /** What dropping or adding each test would do, in the order of charts and tests. */
  public List<PriceChange> changes(TestSet tests) {
    List<PriceChange> changes = new ArrayList<>();
    for (SignalTest test : SignalTest.values()) {
      PriceChange.Turn turn = turn(tests.onMeans(), test);
      TestSet changed = turn == DROPPED ? tests.without(test) : tests.with(test);
      changes.add(new PriceChange(ChartKind.XBAR, test, turn, of(changed)));
    }
    PriceChange.Turn turn = turn(tests.onSpread(), BEYOND_LIMIT);
    Set<SignalTest> onSpread = turn == DROPPED ? Set.of() : Set.of(BEYOND_LIMIT);
    TestSet changed = new TestSet(tests.onMeans(), onSpread);
    changes.add(new PriceChange(ChartKind.RANGE, BEYOND_LIMIT, turn, of(changed)));
    return List.copyOf(changes);
  }

  private static PriceChange.Turn turn(Set<SignalTest> on, SignalTest test) {
    return on.contains(test) ? DROPPED : ADDED;
  }

  private Price price(RunLength ofCharacteristic, RunLength whenShifted) {
    double samples = ofCharacteristic.ofFirstAmong(line.characteristics()).mean();
    return new Price(samples, plan.samplesPerShift() / samples, whenShifted.mean());
  }

  private static RunLength ofMeans(Set<SignalTest> tests, double shift) {
    return tests.isEmpty() ? RunLength.endless() : TestRunLength.of(tests, shift);
  }

  private RunLength ofRange(TestSet tests) {
    return tests.onSpread().isEmpty()
        ? RunLength.endless()
        : RunLength.geometric(SpreadSignal.ofRange(line.size(), 1));
  }
}
