package dev.filmward.subgroup;

/**
 * The readings of one characteristic in one sample, summed up. Micrometres, or fractions for a
 * share. Immutable.
 *
 * @param size how many readings there were, at least 1
 * @param mean arithmetic mean
 * @param least smallest reading
 * @param greatest largest reading
 * @param sumOfSquares of the deviations from the mean; 0 for a single reading
 */
public record Subgroup(int size, double mean, double least, double greatest, double sumOfSquares) {

  public Subgroup {
    if (!(size >= 1)) {
      throw new IllegalArgumentException("a subgroup has at least one reading, not " + size);
    }
    if (!(least <= greatest) || !Double.isFinite(mean) || !(sumOfSquares >= 0)) {
      throw new IllegalArgumentException(
          "not a subgroup: mean " + mean + ", least " + least + ", greatest " + greatest);
    }
  }

  /**
   * Sums up the first {@code size} values of an array.
   *
   * <p>The mean is of the values less the first one, so that it does not suffer from a large common
   * part; the squares are of deviations from that mean (two passes; Chan, Golub and LeVeque, The
   * American Statistician 37 (1983) 242, eq. 1.7).
   */
  public static Subgroup of(double[] values, int size) {
    double first = values[0];
    double least = first;
    double greatest = first;
    double sum = 0;
    for (int i = 0; i < size; i++) {
      double value = values[i];
      sum += value - first;
      least = Math.min(least, value);
      greatest = Math.max(greatest, value);
    }
    double mean = first + sum / size;
    double squares = 0;
    double rest = 0;
    for (int i = 0; i < size; i++) {
      double deviation = values[i] - mean;
      squares += deviation * deviation;
      rest += deviation;
    }
    return new Subgroup(size, mean, least, greatest, Math.max(0, squares - rest * rest / size));
  }

  /** Largest less smallest reading; 0 for a single one. */
  public double range() {
    return greatest - least;
  }
}
