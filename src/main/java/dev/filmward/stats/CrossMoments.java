package dev.filmward.stats;

import java.io.Serializable;

/**
 * Count, means and covariances of vectors of finite numbers that come one at a time or as other
 * accumulators. Sums of deviations from the first vector and of their products are kept in twice
 * the precision of a double, as in {@link Moments}.
 *
 * <p>Mutable, for one thread; memory grows with the square of the width only.
 */
public final class CrossMoments implements Serializable {
  private static final long serialVersionUID = 1L;

  private final int width;
  private final double[] origin;
  private final CompensatedSum[] sums;
  private final CompensatedSum[][] products;
  private long count;

  /** For vectors of {@code width} numbers, at least 1. */
  public CrossMoments(int width) {
    if (width < 1) {
      throw new IllegalArgumentException("a vector has at least one number, not " + width);
    }
    this.width = width;
    origin = new double[width];
    sums = new CompensatedSum[width];
    products = new CompensatedSum[width][];
    for (int i = 0; i < width; i++) {
      sums[i] = new CompensatedSum();
      products[i] = new CompensatedSum[i + 1];
      for (int j = 0; j <= i; j++) {
        products[i][j] = new CompensatedSum();
      }
    }
  }

  public void add(double[] vector) {
    check(vector);
    if (count == 0) {
      System.arraycopy(vector, 0, origin, 0, width);
    }
    for (int i = 0; i < width; i++) {
      double deviation = vector[i] - origin[i];
      sums[i].add(deviation);
      for (int j = 0; j <= i; j++) {
        products[i][j].addProduct(deviation, vector[j] - origin[j]);
      }
    }
    count++;
  }

  /** Adds all that another accumulator of the same width has seen; the other stays as it is. */
  public void merge(CrossMoments other) {
    if (other.width != width) {
      throw new IllegalArgumentException("widths differ: " + width + " and " + other.width);
    }
    if (other.count == 0) {
      return;
    }
    if (count == 0) {
      System.arraycopy(other.origin, 0, origin, 0, width);
    }
    for (int i = 0; i < width; i++) {
      for (int j = 0; j <= i; j++) {
        mergeProduct(other, i, j);
      }
    }
    for (int i = 0; i < width; i++) {
      sums[i].addProduct((double) other.count, other.origin[i] - origin[i]);
      sums[i].add(other.sums[i]);
    }
    count += other.count;
  }

  private void mergeProduct(CrossMoments other, int i, int j) {
    double shiftI = other.origin[i] - origin[i];
    double shiftJ = other.origin[j] - origin[j];
    CompensatedSum product = products[i][j];
    product.add(other.products[i][j]);
    product.addProduct(shiftI, other.sums[j]);
    product.addProduct(shiftJ, other.sums[i]);
    product.addProduct(shiftI * other.count, shiftJ);
  }

  public int width() {
    return width;
  }

  public long count() {
    return count;
  }

  /** Means of the components; there must be a vector ({@link IllegalStateException}). */
  public double[] means() {
    if (count == 0) {
      throw new IllegalStateException("no vectors, so no means; ask count() first");
    }
    double[] means = new double[width];
    for (int i = 0; i < width; i++) {
      means[i] = origin[i] + sums[i].value() / count;
    }
    return means;
  }

  /** Sums of products of the deviations from the means, a full symmetrical matrix. */
  public double[][] sumsOfProducts() {
    double[][] matrix = new double[width][width];
    for (int i = 0; i < width; i++) {
      for (int j = 0; j <= i; j++) {
        matrix[i][j] = count == 0 ? 0 : sumOfProducts(i, j);
        matrix[j][i] = matrix[i][j];
      }
    }
    return matrix;
  }

  private double sumOfProducts(int i, int j) {
    CompensatedSum sum = new CompensatedSum();
    sum.add(products[i][j]);
    sum.addProduct(-sums[i].value() / count, sums[j]);
    return sum.value();
  }

  /** With n - 1 in the denominator; there must be two vectors ({@link IllegalStateException}). */
  public double[][] covariance() {
    if (count < 2) {
      throw new IllegalStateException("no covariance of " + count + " vectors");
    }
    double[][] matrix = sumsOfProducts();
    for (double[] row : matrix) {
      for (int j = 0; j < width; j++) {
        row[j] /= count - 1;
      }
    }
    return matrix;
  }

  private void check(double[] vector) {
    if (vector.length != width) {
      throw new IllegalArgumentException(
          "a vector of " + width + " numbers is needed, not of " + vector.length);
    }
    for (double value : vector) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("only finite numbers can be summed up, not " + value);
      }
    }
  }
}
