package dev.filmward.capability;

import dev.filmward.film.SpecLimits;
import java.util.OptionalDouble;

/**
 * Capability indices (cp, cpk: spread within subgroups) and performance indices (pp, ppk: spread of
 * all readings) of a normal characteristic. Pure numbers; an index is empty where it cannot be
 * computed, and never infinite.
 *
 * <p>With one specification limit only cpk and ppk exist, and are those of that side. A mean
 * outside the limits makes them negative. Without spread there is no index. Whether they may be
 * called capability depends on the stability of the process, which is not judged here. Immutable.
 *
 * <p>Source: ISO 22514-2; D. C. Montgomery, Introduction to Statistical Quality Control, 7th ed.
 * (2013), section 8.3.
 */
public record Capability(
    OptionalDouble cp, OptionalDouble cpk, OptionalDouble pp, OptionalDouble ppk) {
  /** No index could be computed. */
  public static final Capability NONE =
      new Capability(
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty());

  public static Capability of(
      double mean, OptionalDouble sigmaWithin, OptionalDouble sigmaOverall, SpecLimits spec) {
    return new Capability(
        width(sigmaWithin, spec),
        nearest(mean, sigmaWithin, spec),
        width(sigmaOverall, spec),
        nearest(mean, sigmaOverall, spec));
  }

  public boolean isEmpty() {
    return equals(NONE);
  }

  private static OptionalDouble width(OptionalDouble sigma, SpecLimits spec) {
    if (spec.lower().isEmpty() || spec.upper().isEmpty()) {
      return OptionalDouble.empty();
    }
    return inSigmas(spec.upper().getAsDouble() - spec.lower().getAsDouble(), 6, sigma);
  }

  private static OptionalDouble nearest(double mean, OptionalDouble sigma, SpecLimits spec) {
    double below = mean - spec.lower().orElse(Double.NEGATIVE_INFINITY);
    double above = spec.upper().orElse(Double.POSITIVE_INFINITY) - mean;
    return inSigmas(Math.min(below, above), 3, sigma);
  }

  private static OptionalDouble inSigmas(double distance, int sigmas, OptionalDouble sigma) {
    double index = distance / (sigmas * sigma.orElse(0));
    return Double.isFinite(index) ? OptionalDouble.of(index) : OptionalDouble.empty();
  }
}
