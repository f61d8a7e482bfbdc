package dev.filmward.gauge.conformity;

import dev.filmward.film.SpecLimits;
import dev.filmward.stats.Normal;
import java.util.OptionalDouble;

/**
 * A specification with a guard band inside its limits, one- or two-sided. Immutable.
 *
 * <p>Source: JCGM 106:2012, 7.2 to 7.4 for the probability of conformity, 8.3.2 for guarded
 * acceptance.
 *
 * @param spec lower and upper limits, at least one of them
 * @param guard width of the guard band, zero or more
 */
public record GuardedLimits(SpecLimits spec, double guard) {

  public GuardedLimits {
    if (spec.lower().isEmpty() && spec.upper().isEmpty()) {
      throw new IllegalArgumentException(
          "without a specification limit there is nothing to conform to");
    }
    if (!(guard >= 0) || !Double.isFinite(guard)) {
      throw new IllegalArgumentException("a guard band is zero or more, not " + guard);
    }
  }

  public OptionalDouble acceptFrom() {
    return moved(spec.lower(), guard);
  }

  public OptionalDouble acceptUpTo() {
    return moved(spec.upper(), -guard);
  }

  /** Whether any value is accepted: guard bands from both sides may leave nothing. */
  public boolean leavesRoom() {
    return from() <= upTo();
  }

  public Zone zone(double value) {
    if (value >= from() && value <= upTo()) {
      return Zone.PASS;
    }
    if (!spec.excludes(value)) {
      return Zone.CONDITIONAL_PASS;
    }
    return value >= lower() - guard && value <= upper() + guard ? Zone.CONDITIONAL_FAIL : Zone.FAIL;
  }

  /**
   * How likely the true value conforms where one was measured and nothing else is known: {@code
   * Phi((upper - y) / u) - Phi((lower - y) / u)}. The tail beyond each limit is taken by itself, so
   * that certainty keeps its digits.
   *
   * @param standard uncertainty u, above zero
   */
  public double probability(double measured, double standard) {
    if (!(standard > 0)) {
      throw new IllegalArgumentException("a standard uncertainty is above zero, not " + standard);
    }
    double below = Normal.STANDARD.below((lower() - measured) / standard);
    double above = Normal.STANDARD.above((upper() - measured) / standard);
    return Math.max(0, 1 - below - above);
  }

  double lower() {
    return spec.lower().orElse(Double.NEGATIVE_INFINITY);
  }

  double upper() {
    return spec.upper().orElse(Double.POSITIVE_INFINITY);
  }

  double from() {
    return lower() + guard;
  }

  double upTo() {
    return upper() - guard;
  }

  private static OptionalDouble moved(OptionalDouble limit, double by) {
    return limit.isPresent() ? OptionalDouble.of(limit.getAsDouble() + by) : limit;
  }
}
