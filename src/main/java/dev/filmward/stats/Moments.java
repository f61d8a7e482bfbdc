package dev.filmward.stats;

import java.io.Serializable;
import java.util.OptionalDouble;

/**
 * Count, mean and standard deviation of finite numbers that come one at a time, as summaries of
 * groups, or as other accumulators; however they are split and merged, the result is the same to
 * the last digits of a double.
 *
 * <p>Sums of the deviations from the first number and of their squares are kept in twice the
 * precision of a double, in units of a power of two that keeps squares of tiny and of huge numbers
 * in range. With no numbers there is no mean ({@link IllegalStateException}); with fewer than two
 * there is no standard deviation. Mutable, for one thread.
 *
 * <p>Source: T. F. Chan, G. H. Golub and R. J. LeVeque, Algorithms for computing the sample
 * variance, The American Statistician 37 (1983) 242, the shifted textbook formula; sums as in
 * {@link CompensatedSum}.
 */
public final class Moments implements Serializable {
  private static final long serialVersionUID = 1L;

  private static final double TINY = 0x1p-400;
  private static final double HUGE = 0x1p400;
  private static final double UNIT_OF_TINY = 0x1p-700;
  private static final double UNIT_OF_HUGE = 0x1p700;

  private long count;
  private double unit = UNIT_OF_TINY;
  private double origin;
  private CompensatedSum sum = new CompensatedSum();
  private CompensatedSum squares = new CompensatedSum();

  public void add(double value) {
    addCopies(1, value);
  }

  /**
   * Adds a group of {@code n} numbers of which only the mean and the sum of the squared deviations
   * from it are known. A group of none changes nothing.
   */
  public void addSummary(long n, double mean, double sumOfSquares) {
    if (!(n >= 0) || !(sumOfSquares >= 0) || !Double.isFinite(sumOfSquares)) {
      throw new IllegalArgumentException(
          "not a summary of numbers: n " + n + ", sum of squares " + sumOfSquares);
    }
    if (n > 0) {
      addCopies(n, mean);
      fit(Math.sqrt(sumOfSquares));
      squares.add(sumOfSquares / unit / unit);
    }
  }

  /**
   * Adds squared deviations within groups whose means were added without them. There must be a
   * number ({@link IllegalStateException}).
   */
  public void addSquares(double sumOfSquares) {
    if (count == 0) {
      throw new IllegalStateException("no numbers, so no squares of theirs");
    }
    if (!(sumOfSquares >= 0) || !Double.isFinite(sumOfSquares)) {
      throw new IllegalArgumentException("not a sum of squares: " + sumOfSquares);
    }
    fit(Math.sqrt(sumOfSquares));
    squares.add(sumOfSquares / unit / unit);
  }

  /** Adds all that another accumulator has seen; the other stays as it is. */
  public void merge(Moments other) {
    if (other.count == 0) {
      return;
    }
    Moments that = other.copy();
    rescale(Math.max(unit, that.unit));
    that.rescale(unit);
    addCopies(that.count, that.origin * unit);
    double shift = that.origin - origin;
    double shiftRest = differenceRest(that.origin, origin, shift);
    sum.add(that.sum);
    squares.add(that.squares);
    squares.addProduct(2 * shift, that.sum);
    squares.addProduct(2 * shiftRest, that.sum);
  }

  public long count() {
    return count;
  }

  /** There must be a number ({@link IllegalStateException}). */
  public double mean() {
    if (count == 0) {
      throw new IllegalStateException("no numbers, so no mean; ask count() first");
    }
    double quotient = sum.value() / count;
    CompensatedSum remainder = new CompensatedSum();
    remainder.add(sum);
    remainder.addProduct(-quotient, (double) count);
    CompensatedSum mean = new CompensatedSum();
    mean.add(origin);
    mean.add(quotient);
    mean.add(remainder.value() / count);
    return mean.value() * unit;
  }

  /** Of the deviations from the mean; 0 when nothing was added. */
  public double sumOfSquares() {
    return count == 0 ? 0 : scaledSquares() * unit * unit;
  }

  /** With n - 1 in the denominator; empty for fewer than two numbers. */
  public OptionalDouble standardDeviation() {
    return count < 2
        ? OptionalDouble.empty()
        : OptionalDouble.of(Math.sqrt(scaledSquares() / (count - 1)) * unit);
  }

  private double scaledSquares() {
    CompensatedSum scaled = new CompensatedSum();
    scaled.addProduct((double) count, squares);
    scaled.subtractSquare(sum);
    return Math.max(0, scaled.value() / count);
  }

  private void addCopies(long n, double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("only finite numbers can be summed up, not " + value);
    }
    fit(Math.abs(value));
    double scaled = value / unit;
    if (count == 0) {
      origin = scaled;
    }
    double deviation = scaled - origin;
    double rest = differenceRest(scaled, origin, deviation);
    double copies = (double) n;
    sum.addProduct(copies, deviation);
    sum.addProduct(copies, rest);
    double square = deviation * deviation;
    squares.addProduct(copies, square);
    squares.addProduct(copies, Math.fma(deviation, deviation, -square));
    squares.addProduct(2 * copies * deviation, rest);
    count += n;
  }

  /** What rounding took from {@code difference = a - b}, exactly (Knuth's TwoSum). */
  private static double differenceRest(double a, double b, double difference) {
    double taken = difference - a;
    return (a - (difference - taken)) - (b + taken);
  }

  private void fit(double magnitude) {
    if (magnitude >= HUGE) {
      rescale(UNIT_OF_HUGE);
    } else if (magnitude >= TINY && unit < 1) {
      rescale(1);
    }
  }

  private void rescale(double newUnit) {
    double ratio = unit / newUnit;
    if (ratio != 1) {
      unit = newUnit;
      origin *= ratio;
      sum.scale(ratio);
      squares.scale(ratio);
      squares.scale(ratio);
    }
  }

  private Moments copy() {
    Moments copy = new Moments();
    copy.count = count;
    copy.unit = unit;
    copy.origin = origin;
    copy.sum.add(sum);
    copy.squares.add(squares);
    return copy;
  }
}
