package dev.filmward.report;

import dev.filmward.film.SpecLimits;
import java.util.OptionalDouble;

/** A specification as a report says it: um, or a fraction for a share; each part may be missing. */
public record Bounds(OptionalDouble lower, OptionalDouble target, OptionalDouble upper) {
  static Bounds of(SpecLimits spec) {
    return new Bounds(spec.lower(), spec.target(), spec.upper());
  }

  public boolean isEmpty() {
    return lower.isEmpty() && upper.isEmpty();
  }
}
