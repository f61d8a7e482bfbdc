package dev.filmward.report;

/**
 * What is asked of every characteristic.
 *
 * @param index that Ppk must reach
 * @param confidence of its lower limit, 0 to 1
 */
public record Asked(double index, double confidence) {
  public static final Asked USUAL = new Asked(1.33, 0.95);

  public Asked {
    if (!(index > 0 && index <= 5)) {
      throw new IllegalArgumentException(
          "an index that is asked for is above 0, up to 5, not " + index);
    }
    if (!(confidence >= 0.5 && confidence < 1)) {
      throw new IllegalArgumentException(
          "a confidence is 0.5 or more and below 1, not " + confidence);
    }
  }
}
