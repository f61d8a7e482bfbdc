package dev.filmward.rule.price;

import dev.filmward.rule.TestSet;
import java.util.ArrayList;
import java.util.List;

/**
 * The price of tests that may differ from characteristic to characteristic of a line, counted as
 * {@link PriceList} does: readings normal and independent, limits those of the process, charts
 * independent of each other. Immutable.
 *
 * @param line of all charts together; its samples to see one sigma are those of the slowest
 *     characteristic
 * @param characteristics each alone, in the order asked
 * @param exact whether the figures are exact; else no more false alarms and no later than this
 */
public record ChosenPrice(Price line, List<Price> characteristics, Exactness exact) {
  private static final double ONE_SIGMA = 1;

  /** How sure the figures are. */
  public enum Exactness {
    EXACT,
    AT_MOST
  }

  public ChosenPrice {
    characteristics = List.copyOf(characteristics);
  }

  /**
   * Works the price out.
   *
   * @param tests those that raise alarms, for each characteristic; at least one
   * @param size readings in a subgroup, 1 to 100; a subgroup of one has no range
   */
  public static ChosenPrice of(
      List<TestSet> tests, int size, SamplingPlan plan, RunLengthBook book) {
    RunLength ofLine = RunLength.endless();
    List<Price> prices = new ArrayList<>();
    double slowest = 0;
    for (TestSet each : tests) {
      RunLength falseAlarm = book.ofFalseAlarm(each).orOf(ofRange(each, size));
      ofLine = ofLine.orOf(falseAlarm);
      double toSee = book.pointsToSee(each, ONE_SIGMA);
      slowest = Math.max(slowest, toSee);
      prices.add(price(falseAlarm, toSee, plan));
    }
    boolean exact = tests.stream().allMatch(RunLengthBook::isExact);
    return new ChosenPrice(
        price(ofLine, slowest, plan), prices, exact ? Exactness.EXACT : Exactness.AT_MOST);
  }

  private static Price price(RunLength falseAlarm, double toSee, SamplingPlan plan) {
    double samples = falseAlarm.mean();
    return new Price(samples, plan.samplesPerShift() / samples, toSee);
  }

  private static RunLength ofRange(TestSet tests, int size) {
    return tests.onSpread().isEmpty() || size < 2
        ? RunLength.endless()
        : RunLength.geometric(SpreadSignal.ofRange(size, 1));
  }
}
