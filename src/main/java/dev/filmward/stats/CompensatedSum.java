package dev.filmward.stats;

import java.io.Serializable;

/**
 * A sum of finite doubles and of their products, carried with about twice the precision of a
 * double. Terms may come in any order and size; nothing is lost to a large partial sum.
 *
 * <p>Mutable, for one thread. Source: T. Ogita, S. M. Rump and S. Oishi, Accurate sum and dot
 * product, SIAM Journal on Scientific Computing 26 (2005) 1955, algorithms Sum2 and Dot2.
 */
public final class CompensatedSum implements Serializable {
  private static final long serialVersionUID = 1L;

  private double sum;
  private double rest;

  public void add(double term) {
    double next = sum + term;
    double taken = next - sum;
    rest += (sum - (next - taken)) + (term - taken);
    sum = next;
  }

  public void add(CompensatedSum other) {
    double otherRest = other.rest;
    add(other.sum);
    rest += otherRest;
  }

  /** Adds {@code a * b} without rounding the product first. */
  public void addProduct(double a, double b) {
    double product = a * b;
    add(product);
    rest += Math.fma(a, b, -product);
  }

  /** Adds {@code factor} times another sum. */
  public void addProduct(double factor, CompensatedSum other) {
    double otherRest = other.rest;
    addProduct(factor, other.sum);
    addProduct(factor, otherRest);
  }

  /** Adds the negative square of another sum. */
  void subtractSquare(CompensatedSum other) {
    addProduct(-other.sum, other);
    addProduct(-other.rest, other);
  }

  /** Multiplies by a power of two, which is exact while nothing overflows or underflows. */
  void scale(double powerOfTwo) {
    sum *= powerOfTwo;
    rest *= powerOfTwo;
  }

  /** The sum, rounded to a double. */
  public double value() {
    return sum + rest;
  }
}
