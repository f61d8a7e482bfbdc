package dev.filmward.rule.price;

import dev.filmward.rule.SignalTest;
import dev.filmward.stats.Normal;
import java.util.Set;
import java.util.TreeSet;

/**
 * The parts of a chart between which tests tell, with the probability of each for points that are
 * normal with mean {@code shift} and standard deviation 1. Immutable.
 */
final class Zones {
  private final double[] lines;
  private final double[] probabilities;

  Zones(Set<SignalTest> tests, double shift) {
    Set<Double> lines = new TreeSet<>();
    for (SignalTest test : tests) {
      double line =
          switch (test) {
            case BEYOND_LIMIT -> 3;
            case TWO_OF_THREE -> 2;
            case FOUR_OF_FIVE, STRATIFICATION, MIXTURE -> 1;
            case EIGHT_IN_A_ROW -> 0;
            case TREND, ALTERNATION -> Double.POSITIVE_INFINITY;
          };
      lines.add(line);
      lines.add(line == 0 ? 0 : -line);
    }
    lines.add(Double.NEGATIVE_INFINITY);
    lines.add(Double.POSITIVE_INFINITY);
    this.lines = lines.stream().mapToDouble(Double::doubleValue).toArray();
    probabilities = new double[count()];
    for (int zone = 0; zone < count(); zone++) {
      probabilities[zone] = between(this.lines[zone] - shift, this.lines[zone + 1] - shift);
    }
  }

  int count() {
    return lines.length - 1;
  }

  /** A place within the zone. */
  double inside(int zone) {
    double low = Math.max(lines[zone], Math.min(lines[zone + 1] - 1, -4));
    double high = Math.min(lines[zone + 1], Math.max(lines[zone] + 1, 4));
    return (low + high) / 2;
  }

  double probability(int zone) {
    return probabilities[zone];
  }

  private static double between(double low, double high) {
    Normal normal = Normal.STANDARD;
    return low + high > 0
        ? normal.above(low) - normal.above(high)
        : normal.below(high) - normal.below(low);
  }
}
