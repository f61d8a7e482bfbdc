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

  /** Sums up the first {@code size} values of an array, as {@link SubgroupSum} does. */
  public static Subgroup of(double[] values, int size) {
    SubgroupSum sum = new SubgroupSum();
    sum.take(values, size);
    return new Subgroup(size, sum.mean(), sum.least(), sum.greatest(), sum.sumOfSquares());
  }

  /** Largest less smallest reading; 0 for a single one. */
  public double range() {
    return greatest - least;
  }
}
