package dev.filmward.drift;

/** A value with its 95 % confidence interval, in the unit of what was estimated. Immutable. */
public record Estimate(double value, double lower, double upper) {

  public Estimate {
    if (!(lower <= value) || !(value <= upper)) {
      throw new IllegalArgumentException(
          "an interval holds its value; not " + lower + ", " + value + ", " + upper);
    }
  }

  static Estimate symmetric(double value, double halfWidth) {
    return new Estimate(value, value - halfWidth, value + halfWidth);
  }

  /** Whether the interval leaves out 0, so that the sign is known. */
  public boolean isNotZero() {
    return lower > 0 || upper < 0;
  }
}
