package dev.filmward.simulate;

import dev.filmward.simulate.ExpectedAlarm.Side;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Finds where one series of subgroups is out of control, by arithmetic of its own: limits from the
 * first 25 subgroups (mean of means, mean range over d2), then a mean beyond three sigma, or any
 * other zone test or a range beyond its limit at two subgroups in a row.
 *
 * <p>d2 and d3 for 2 to 5 readings as printed in the ASTM Manual on Presentation of Data and
 * Control Chart Analysis, STP 15D (1976), table 27. Zone tests after the Western Electric handbook
 * (1956).
 */
final class ControlCheck {
  private static final double[] D2 = {0, 0, 1.128, 1.693, 2.059, 2.326};
  private static final double[] D3 = {0, 0, 0.853, 0.888, 0.880, 0.864};
  private static final int BASELINE = 25;

  private final double centre;
  private final double sigma;
  private final Twice twice;

  private ControlCheck(double centre, double sigma, Twice twice) {
    this.centre = centre;
    this.sigma = sigma;
    this.twice = twice;
  }

  /** How "at two subgroups in a row" is understood. */
  enum Twice {
    SAME_TEST_AND_SIDE,
    ANY_TEST
  }

  enum Test {
    TWO_OF_THREE,
    FOUR_OF_FIVE,
    EIGHT_IN_A_ROW,
    RANGE
  }

  record Sign(Test test, Side side) {}

  record Finding(int index, Side side) {}

  /**
   * @param subgroups at least two readings in each
   * @param slack what sigma is multiplied by, to see how near a limit things are
   */
  static List<Finding> findings(List<double[]> subgroups, double slack, Twice twice) {
    double means = 0;
    double spreads = 0;
    for (double[] subgroup : subgroups.subList(0, BASELINE)) {
      means += mean(subgroup);
      spreads += range(subgroup) / D2[subgroup.length];
    }
    return new ControlCheck(means / BASELINE, slack * spreads / BASELINE, twice)
        .findings(subgroups);
  }

  private List<Finding> findings(List<double[]> subgroups) {
    double[] z = subgroups.stream().mapToDouble(this::standardised).toArray();
    List<Finding> found = new ArrayList<>();
    Set<Sign> before = Set.of();
    for (int i = 0; i < z.length; i++) {
      if (Math.abs(z[i]) > 3) {
        found.add(new Finding(i, side(z[i])));
      }
      Set<Sign> now = signs(z, i, subgroups.get(i));
      for (Sign sign : now) {
        if (twice == Twice.ANY_TEST ? !before.isEmpty() : before.contains(sign)) {
          found.add(new Finding(i, sign.side()));
        }
      }
      before = now;
    }
    return found;
  }

  private Set<Sign> signs(double[] z, int at, double[] subgroup) {
    Set<Sign> signs = new HashSet<>();
    for (Test test : EnumSet.of(Test.TWO_OF_THREE, Test.FOUR_OF_FIVE, Test.EIGHT_IN_A_ROW)) {
      if (isFulfilled(test, z, at)) {
        signs.add(new Sign(test, side(z[at])));
      }
    }
    int n = subgroup.length;
    double upper = sigma * (D2[n] + 3 * D3[n]);
    double lower = sigma * Math.max(0, D2[n] - 3 * D3[n]);
    if (range(subgroup) > upper || range(subgroup) < lower) {
      signs.add(new Sign(Test.RANGE, Side.SPREAD));
    }
    return signs;
  }

  private static boolean isFulfilled(Test test, double[] z, int at) {
    return switch (test) {
      case TWO_OF_THREE -> isZone(z, at, 3, 2, 2);
      case FOUR_OF_FIVE -> isZone(z, at, 5, 4, 1);
      case EIGHT_IN_A_ROW -> isZone(z, at, 8, 8, 0);
      case RANGE -> throw new IllegalArgumentException("not a test of means");
    };
  }

  private static boolean isZone(double[] z, int at, int window, int least, double beyond) {
    double sign = Math.signum(z[at]);
    int count = 0;
    for (int i = Math.max(0, at - window + 1); i <= at; i++) {
      count += sign * z[i] > beyond ? 1 : 0;
    }
    return sign * z[at] > beyond && count >= least;
  }

  private double standardised(double[] subgroup) {
    return (mean(subgroup) - centre) / (sigma / Math.sqrt(subgroup.length));
  }

  private static Side side(double z) {
    return z > 0 ? Side.HIGH : Side.LOW;
  }

  private static double mean(double[] values) {
    return Arrays.stream(values).average().orElseThrow();
  }

  private static double range(double[] values) {
    return Arrays.stream(values).max().orElseThrow() - Arrays.stream(values).min().orElseThrow();
  }
}
