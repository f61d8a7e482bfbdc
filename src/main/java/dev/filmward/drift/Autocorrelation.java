package dev.filmward.drift;

import dev.filmward.stats.ChiSquare;
import dev.filmward.stats.CompensatedSum;
import dev.filmward.stats.Normal;
import java.io.Serializable;

/**
 * How alike the means of samples are that lie 1, 2, 3 ... samples apart, of finite numbers that
 * come one at a time, in memory that does not grow with their number. Pieces of a series merge if
 * they are merged in order.
 *
 * <p>Coefficients are sums of lagged products over the sum of squares, both around the mean of all
 * (no correction for the fewer products of longer lags). Without spread they are 0. Mutable, for
 * one thread.
 *
 * <p>Source: G. E. P. Box, G. M. Jenkins and G. C. Reinsel, Time Series Analysis, 3rd ed. (1994),
 * section 2.1; G. M. Ljung and G. E. P. Box, On a measure of lack of fit in time series models,
 * Biometrika 65 (1978) 297.
 */
public final class Autocorrelation implements Serializable {
  private static final long serialVersionUID = 1L;

  private final int lags;
  private final double[] head;
  private final double[] tail;
  private final CompensatedSum[] products;
  private final CompensatedSum sum = new CompensatedSum();
  private double origin;
  private long count;

  /** Of lags 1 to {@code lags}. */
  public Autocorrelation(int lags) {
    if (!(lags >= 1)) {
      throw new IllegalArgumentException("at least lag 1 is looked at, not up to " + lags);
    }
    this.lags = lags;
    head = new double[lags];
    tail = new double[lags];
    products = new CompensatedSum[lags + 1];
    for (int lag = 0; lag <= lags; lag++) {
      products[lag] = new CompensatedSum();
    }
  }

  public void add(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("only finite numbers have an autocorrelation: " + value);
    }
    if (count == 0) {
      origin = value;
    }
    addDeviation(value - origin);
  }

  private void addDeviation(double deviation) {
    products[0].addProduct(deviation, deviation);
    for (int lag = 1; lag <= Math.min(lags, count); lag++) {
      products[lag].addProduct(deviation, back(lag));
    }
    if (count < lags) {
      head[(int) count] = deviation;
    }
    tail[(int) (count % lags)] = deviation;
    sum.add(deviation);
    count++;
  }

  /** The deviation that was added {@code lag} before the next one. */
  private double back(int lag) {
    return tail[(int) ((count - lag) % lags)];
  }

  /** Adds the piece of the series that comes next; the other stays as it is. */
  public void append(Autocorrelation later) {
    if (later.lags != lags) {
      throw new IllegalArgumentException("pieces with " + lags + " and " + later.lags + " lags");
    }
    if (count == 0) {
      origin = later.origin;
    }
    double shift = later.origin - origin;
    int known = (int) Math.min(later.count, lags);
    long before = count;
    for (int lag = 0; lag <= lags; lag++) {
      products[lag].add(later.productsAround(-shift, lag));
      for (int i = 0; i < Math.min(lag, known); i++) {
        if (before - lag + i >= 0) {
          products[lag].addProduct(later.head[i] + shift, back(lag - i));
        }
      }
    }
    keepEnds(later, shift, known);
    sum.add(later.sum);
    sum.addProduct(shift, (double) later.count);
    count += later.count;
  }

  private void keepEnds(Autocorrelation later, double shift, int known) {
    for (int i = 0; i < known; i++) {
      if (count + i < lags) {
        head[(int) count + i] = later.head[i] + shift;
      }
    }
    for (int lag = known; lag >= 1; lag--) {
      tail[(int) ((count + later.count - lag) % lags)] = later.back(lag) + shift;
    }
  }

  /** Sum of lagged products of deviations from a level, itself relative to the first number. */
  private CompensatedSum productsAround(double level, int lag) {
    CompensatedSum around = new CompensatedSum();
    if (count <= lag) {
      return around;
    }
    around.add(products[lag]);
    around.addProduct(-2 * level, sum);
    for (int i = 0; i < lag; i++) {
      around.addProduct(level, head[i]);
      around.addProduct(level, back(i + 1));
    }
    around.addProduct(level * level, (double) (count - lag));
    return around;
  }

  public long count() {
    return count;
  }

  /** Coefficient of a lag from 0 on; 0 where there are no pairs or no spread. */
  public double at(int lag) {
    if (!(lag >= 0 && lag <= lags)) {
      throw new IllegalArgumentException("lags 0 to " + lags + " are known, not " + lag);
    }
    if (count == 0) {
      return 0;
    }
    double mean = sum.value() / count;
    double squares = productsAround(mean, 0).value();
    return squares > 0 ? productsAround(mean, lag).value() / squares : 0;
  }

  /** Independent numbers stay within this distance of 0 in 95 % of all cases. */
  public double band() {
    return Normal.STANDARD.upperQuantile(0.025) / Math.sqrt((double) count);
  }

  /**
   * Lag-1 coefficient with the bias of a fitted mean taken out (see {@link Regression}), at most
   * 0.99 either way. At least 4 numbers.
   */
  public double lag1() {
    if (count < 4) {
      throw new IllegalStateException("too few numbers for an autocorrelation: " + count);
    }
    double corrected = (count * at(1) + 1) / (count - 3);
    return Math.max(-0.99, Math.min(0.99, corrected));
  }

  /** Standard deviation of {@link #lag1}, after the source named first, section 7.2. */
  public double lag1StandardError() {
    double phi = lag1();
    return Math.sqrt((1 - phi * phi) / count);
  }

  /** Test of lags 1 to {@code upTo} together. */
  public Portmanteau ljungBox(int upTo) {
    double statistic = 0;
    for (int lag = 1; lag <= upTo; lag++) {
      double coefficient = at(lag);
      statistic += coefficient * coefficient / (count - lag);
    }
    statistic *= (double) count * (count + 2);
    return new Portmanteau(statistic, new ChiSquare(upTo).above(statistic));
  }

  /**
   * Ljung and Box's test.
   *
   * @param p probability of a greater statistic if the numbers are independent
   */
  public record Portmanteau(double statistic, double p) {}
}
