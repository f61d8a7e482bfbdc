package dev.filmward.gauge.echo;

/**
 * What a flat boundary does to a plane wave that meets it at a right angle. Immutable.
 *
 * <p>With the impedances {@code Z1} before and {@code Z2} behind it: pressure reflected {@code R =
 * (Z2 - Z1) / (Z2 + Z1)}, pressure passed on {@code T = 2 Z2 / (Z1 + Z2) = 1 + R}. Through the
 * boundary and back {@code T12 T21 = 1 - R^2} is left. An echo above zero has the sign of what was
 * sent (into the harder medium), one below zero is turned over.
 *
 * <p>Source: L. E. Kinsler, A. R. Frey, A. B. Coppens and J. V. Sanders, Fundamentals of Acoustics,
 * chapter on reflection and transmission, normal incidence (from memory).
 *
 * @param coefficient R, from -1 to 1
 */
public record Reflection(double coefficient) {

  public Reflection {
    if (!(coefficient >= -1 && coefficient <= 1)) {
      throw new IllegalArgumentException("a reflection is from -1 to 1, not " + coefficient);
    }
  }

  /** Of sound that comes through one medium and meets another. */
  public static Reflection between(Medium before, Medium behind) {
    double first = before.impedanceMrayl();
    double second = behind.impedanceMrayl();
    return new Reflection((second - first) / (second + first));
  }

  /** Pressure passed on, as a multiple of what came. */
  public double transmission() {
    return 1 + coefficient;
  }

  /** What is left of the pressure after the way through and back. */
  public double thereAndBack() {
    return 1 - coefficient * coefficient;
  }

  /** {@code 20 log10 |R|}; minus infinity where nothing comes back. */
  public double decibels() {
    return decibels(coefficient);
  }

  static double decibels(double amplitude) {
    return 20 * Math.log10(Math.abs(amplitude));
  }

  public Polarity polarity() {
    return Polarity.of(coefficient);
  }
}
