package dev.filmward.capability;

import dev.filmward.stats.Normal;
import java.util.ArrayList;
import java.util.List;

/**
 * The distribution of an estimated Cpk with two limits when the mean may be near the middle, and
 * the true Cpk whose estimate exceeds the observed one with a given probability. The distance of
 * the mean from the middle, in sigma, is taken as estimated. Immutable.
 *
 * <p>The estimate exceeds c when the mean strays less than {@code D - 3 c S} sigma from the middle,
 * D being half the specification in sigma and S the standard deviation over its true value; that
 * probability is averaged over S by the trapezoidal rule over {@code ln S}.
 *
 * <p>Source: the distribution as in S. Kotz and N. L. Johnson, Process Capability Indices (1993),
 * section 2.3; that the estimated offset serves well was found by simulation, see {@link
 * CpkMethod#CENTRING_ESTIMATED}.
 */
final class CentredCpk {
  private static final double NEGLIGIBLE = 1e-18;

  private final double estimate;
  private final double offset;
  private final double rootOfN;
  private final double degrees;
  private final List<Node> nodes = new ArrayList<>();

  /** A value of S with its weight. */
  private record Node(double spread, double weight) {}

  /**
   * For an estimate from readings.
   *
   * @param offset distance of the mean from the middle of the specification, in sigma
   */
  CentredCpk(EffectiveSize size, double estimate, double offset) {
    this.estimate = estimate;
    this.offset = offset;
    rootOfN = Math.sqrt(size.forMean());
    degrees = size.forVariance() - 1;
    double scale = 3 * rootOfN * estimate;
    double step = Math.min(0.09, 0.4 / Math.sqrt(2 * degrees + scale * scale));
    addNodes(0, step);
    addNodes(-step, -step);
  }

  private void addNodes(double first, double step) {
    for (double logS = first; ; logS += step) {
      double weight = Math.exp(degrees * (logS - Math.expm1(2 * logS) / 2));
      if (weight <= NEGLIGIBLE) {
        return;
      }
      nodes.add(new Node(Math.exp(logS), weight));
    }
  }

  /** By halving, since the probability grows with the true Cpk. */
  double limit(double q) {
    double reach = 1;
    while (above(estimate + reach) < q || above(estimate - reach) > q) {
      reach *= 2;
    }
    double low = estimate - reach;
    double high = estimate + reach;
    while (high - low > 1e-12 * reach) {
      double middle = (low + high) / 2;
      if (above(middle) > q) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return (low + high) / 2;
  }

  /** Probability of an estimate above the observed one if the true Cpk is {@code truth}. */
  double above(double truth) {
    double sum = 0;
    double weights = 0;
    for (Node node : nodes) {
      sum += node.weight * within(3 * truth + offset - 3 * estimate * node.spread);
      weights += node.weight;
    }
    return sum / weights;
  }

  /** Probability of a mean less than {@code room} from the middle, in sigma. */
  private double within(double room) {
    return room > 0
        ? Normal.STANDARD.below(rootOfN * (room - offset))
            - Normal.STANDARD.below(-rootOfN * (room + offset))
        : 0;
  }
}
