package dev.filmward.rule.price;

import dev.filmward.rule.SignalTest;
import java.util.Arrays;
import java.util.Set;

/**
 * Run length of the tests on a mean chart for independent normal points whose mean is off the
 * centre line by a shift, in standard deviations of a point; exact for any choice of tests, to the
 * last digits of a double.
 *
 * <p>The tests of zones make a finite chain. Trend and alternation compare points, so that the
 * place of the last point within its zone counts too. On the scale of the probability of lying
 * below, what is needed is an integral over a polynomial at each step, and it is kept by its values
 * at Gauss nodes.
 *
 * <p>Not thread safe; {@link #of} is. Source: C. W. Champ and W. H. Woodall, Technometrics 29
 * (1987) 393, for the chain.
 */
public final class TestRunLength {
  private static final int NODES = 8;
  private static final int NODES_OF_FEW_ZONES = 20;

  private final Zones zones;
  private final TestChain chain;
  private final GaussLegendre gauss;
  private final double[][] upTo;
  private double[][] survival;
  private double[] averages;

  private TestRunLength(Set<SignalTest> tests, double shift) {
    zones = new Zones(tests, shift);
    chain = new TestChain(tests, zones);
    gauss = new GaussLegendre(nodes(tests, zones.count()));
    upTo = new double[gauss.points()][];
    for (int i = 0; i < upTo.length; i++) {
      upTo[i] = gauss.integralUpTo(gauss.node(i));
    }
    survival = new double[chain.states()][gauss.points()];
    for (double[] row : survival) {
      Arrays.fill(row, 1);
    }
    averages = new double[chain.states()];
    Arrays.fill(averages, 1);
  }

  private static int nodes(Set<SignalTest> tests, int zones) {
    if (!OrderMemory.isNeeded(tests)) {
      return 1;
    }
    return zones <= 2 ? NODES_OF_FEW_ZONES : NODES;
  }

  /**
   * Run length from a fresh start.
   *
   * @param tests at least one
   */
  public static RunLength of(Set<SignalTest> tests, double shift) {
    if (tests.isEmpty() || !Double.isFinite(shift)) {
      throw new IllegalArgumentException("no run length of " + tests + " for a shift of " + shift);
    }
    return RunLength.ofSurvival(new TestRunLength(Set.copyOf(tests), shift)::next);
  }

  /** Probability of no signal within one more point than the last time. */
  private double next() {
    double sum = 0;
    for (int zone = 0; zone < zones.count(); zone++) {
      sum += zones.probability(zone) * average(chain.first(zone));
    }
    lengthen();
    return sum;
  }

  /** Lets all states live through one more point. */
  private void lengthen() {
    double[][] longer = new double[survival.length][];
    for (int state = 0; state < longer.length; state++) {
      longer[state] = fromState(chain.ways(state));
    }
    survival = longer;
    for (int state = 0; state < longer.length; state++) {
      averages[state] = 0;
      for (int i = 0; i < gauss.points(); i++) {
        averages[state] += gauss.weight(i) * longer[state][i];
      }
    }
  }

  private double[] fromState(TestChain.Ways ways) {
    double elsewhere = 0;
    for (int zone = 0; zone < zones.count(); zone++) {
      if (zone != ways.zone()) {
        elsewhere += zones.probability(zone) * average(ways.byZone().get(zone));
      }
    }
    double own = zones.probability(ways.zone());
    double allHigher = average(ways.higher());
    double[] result = new double[gauss.points()];
    for (int i = 0; i < result.length; i++) {
      double within = allHigher - upTo(i, ways.higher()) + upTo(i, ways.lower());
      result[i] = elsewhere + own * within;
    }
    return result;
  }

  private double average(int state) {
    return state == TestChain.SIGNAL ? 0 : averages[state];
  }

  /** Integral over the part of the zone below a node. */
  private double upTo(int node, int state) {
    if (state == TestChain.SIGNAL) {
      return 0;
    }
    double sum = 0;
    for (int j = 0; j < gauss.points(); j++) {
      sum += upTo[node][j] * survival[state][j];
    }
    return sum;
  }
}
