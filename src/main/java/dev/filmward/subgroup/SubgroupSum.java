package dev.filmward.subgroup;

/**
 * What a {@link Subgroup} says, in an object that is used again for the next one. Before the first
 * subgroup, and after one without readings, its size is 0 and nothing else may be asked. For one
 * thread.
 */
public final class SubgroupSum {
  private int size;
  private double mean;
  private double least;
  private double greatest;
  private double sumOfSquares;

  /**
   * Sums up the first {@code count} values of an array.
   *
   * <p>The mean is of the values less the first one, so that it does not suffer from a large common
   * part; the squares are of deviations from that mean (two passes; Chan, Golub and LeVeque, The
   * American Statistician 37 (1983) 242, eq. 1.7).
   */
  void take(double[] values, int count) {
    size = count;
    if (count == 0) {
      return;
    }
    double first = values[0];
    double low = first;
    double high = first;
    double sum = 0;
    for (int i = 0; i < count; i++) {
      double value = values[i];
      sum += value - first;
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    double centre = first + sum / count;
    double squares = 0;
    double rest = 0;
    for (int i = 0; i < count; i++) {
      double deviation = values[i] - centre;
      squares += deviation * deviation;
      rest += deviation;
    }
    mean = centre;
    least = low;
    greatest = high;
    sumOfSquares = Math.max(0, squares - rest * rest / count);
  }

  public int size() {
    return size;
  }

  public double mean() {
    return mean;
  }

  public double least() {
    return least;
  }

  public double greatest() {
    return greatest;
  }

  /** Largest less smallest reading; 0 for a single one. */
  public double range() {
    return greatest - least;
  }

  public double sumOfSquares() {
    return sumOfSquares;
  }
}
