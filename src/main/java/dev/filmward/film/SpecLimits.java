package dev.filmward.film;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * What a customer asks of one thickness, in micrometres (or as a fraction, for a share): a target
 * and a lower and an upper specification limit, each of which may be left out.
 *
 * <p>Where both limits are given the lower is below the upper. The target may lie anywhere, since
 * some contracts name a target outside their own limits. Immutable.
 */
public record SpecLimits(OptionalDouble lower, OptionalDouble target, OptionalDouble upper) {
  /** No target and no limits. */
  public static final SpecLimits NONE =
      new SpecLimits(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

  public SpecLimits {
    finite("lower", lower);
    finite("target", target);
    finite("upper", upper);
    if (lower.isPresent() && upper.isPresent() && !(lower.getAsDouble() < upper.getAsDouble())) {
      throw new IllegalArgumentException(
          "the lower specification limit "
              + lower.getAsDouble()
              + " must be below the upper one "
              + upper.getAsDouble());
    }
  }

  public static SpecLimits of(double lower, double target, double upper) {
    return new SpecLimits(
        OptionalDouble.of(lower), OptionalDouble.of(target), OptionalDouble.of(upper));
  }

  public boolean isEmpty() {
    return lower.isEmpty() && target.isEmpty() && upper.isEmpty();
  }

  /** Whether a value lies outside a limit that is given; a value on the limit is inside. */
  public boolean excludes(double value) {
    return (lower.isPresent() && value < lower.getAsDouble())
        || (upper.isPresent() && value > upper.getAsDouble());
  }

  /** Adds targets and limits; a part is given only where every member gives it. */
  public static SpecLimits sum(List<SpecLimits> members) {
    return new SpecLimits(
        sum(members, SpecLimits::lower),
        sum(members, SpecLimits::target),
        sum(members, SpecLimits::upper));
  }

  private static OptionalDouble sum(
      List<SpecLimits> members, Function<SpecLimits, OptionalDouble> part) {
    double sum = 0;
    for (SpecLimits member : members) {
      OptionalDouble value = part.apply(member);
      if (value.isEmpty()) {
        return OptionalDouble.empty();
      }
      sum += value.getAsDouble();
    }
    return members.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(sum);
  }

  private static void finite(String name, OptionalDouble value) {
    if (value.isPresent() && !Double.isFinite(value.getAsDouble())) {
      throw new IllegalArgumentException(name + " must be finite, not " + value.getAsDouble());
    }
  }
}
