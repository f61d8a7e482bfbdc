package dev.filmward.capability;

/** The check of quantities that are finite and above zero. */
final class Positive {
  private Positive() {}

  static void check(String what, double value) {
    if (!(value > 0) || !Double.isFinite(value)) {
      throw new IllegalArgumentException(what + " is above zero, not " + value);
    }
  }
}
