package dev.filmward.rule;

import static dev.filmward.chart.ChartKind.XBAR;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.stats.Figures;
import dev.filmward.stats.Moments;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * How long it takes on average until a signal, simulated from a fixed seed, against the exact
 * values of Champ and Woodall (1987, table 1): within four standard errors of the simulation.
 */
class RunLengthTest {
  private static final long SEED = 1987;
  private static final int RUNS = 20_000;
  private static final String[] TEST_SETS = {"1", "12", "13", "14", "1234"};

  @ParameterizedTest
  @ValueSource(strings = {"0.0", "1.0", "2.0", "3.0"})
  void theAverageRunLengthIsThatOfTheTable(String shift) {
    Map<String, String> exact =
        Figures.table(getClass(), "run-lengths.csv").stream()
            .filter(row -> row.get("shift").equals(shift))
            .findFirst()
            .orElseThrow();
    Moments[] lengths = simulate(Double.parseDouble(shift));

    for (int set = 0; set < TEST_SETS.length; set++) {
      double standardError = lengths[set].standardDeviation().orElseThrow() / Math.sqrt(RUNS);
      double rounding = 0.005;
      assertThat(lengths[set].mean())
          .as("tests %s, shift %s, seed %d", TEST_SETS[set], shift, SEED)
          .isCloseTo(
              Double.parseDouble(exact.get(TEST_SETS[set])), within(4 * standardError + rounding));
    }
  }

  private static Moments[] simulate(double shift) {
    Random random = new Random(SEED);
    Moments[] lengths = new Moments[TEST_SETS.length];
    for (int set = 0; set < lengths.length; set++) {
      lengths[set] = new Moments();
    }
    for (int run = 0; run < RUNS; run++) {
      int[] first = firstSignals(random, shift);
      for (int set = 0; set < lengths.length; set++) {
        lengths[set].add(first[set]);
      }
    }
    return lengths;
  }

  /** For each set of tests, the number of the point that signals first. */
  private static int[] firstSignals(Random random, double shift) {
    ZoneTests tests = new ZoneTests();
    int[] first = new int[TEST_SETS.length];
    // the first set is part of all others, so all have signalled when it has
    for (int point = 1; first[0] == 0; point++) {
      int signals = tests.next(random.nextGaussian() + shift);
      for (int set = 0; signals != 0 && set < first.length; set++) {
        if (first[set] == 0 && (signals & MASKS[set]) != 0) {
          first[set] = point;
        }
      }
    }
    return first;
  }

  private static final int[] MASKS = masks();

  private static int[] masks() {
    int[] masks = new int[TEST_SETS.length];
    for (int set = 0; set < masks.length; set++) {
      for (char number : TEST_SETS[set].toCharArray()) {
        SignalTest test = SignalTest.values()[number - '1'];
        masks[set] |= new Signal(XBAR, test, Side.HIGH).bit();
        masks[set] |= new Signal(XBAR, test, Side.LOW).bit();
      }
    }
    return masks;
  }
}
