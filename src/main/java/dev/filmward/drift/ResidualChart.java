package dev.filmward.drift;

import java.io.Serializable;
import java.util.OptionalDouble;

/**
 * Points of a chart of residuals: what each mean is off from what the one before it let expect, in
 * standard deviations of such a residual. In control they are independent with standard deviation
 * 1, so limits at 3 hold what they promise even where neighbouring means are alike.
 *
 * <p>Such a chart sees the first sample after a jump well and a steady new level weakly: a shift of
 * d shows as {@code (1 - phi) d} from the second sample on. The first mean, and the first one after
 * {@link #interrupt}, has no residual. Mutable, for one thread.
 *
 * <p>Source: L. C. Alwan and H. V. Roberts, Time-series modeling for statistical process control,
 * Journal of Business and Economic Statistics 6 (1988) 87.
 */
public final class ResidualChart implements Serializable {
  private static final long serialVersionUID = 1L;

  private final double centre;
  private final double lag1;
  private final double sigma;
  private boolean hasLast;
  private double last;

  /**
   * A chart of frozen figures.
   *
   * @param sigma standard deviation of the means themselves, in their unit
   */
  public ResidualChart(double centre, double lag1, double sigma) {
    if (!Double.isFinite(centre) || !(Math.abs(lag1) < 1) || !(sigma > 0)) {
      throw new IllegalArgumentException(
          "no residuals with centre " + centre + ", lag-1 " + lag1 + ", sigma " + sigma);
    }
    this.centre = centre;
    this.lag1 = lag1;
    this.sigma = sigma * Math.sqrt(1 - lag1 * lag1);
  }

  /** The residual of the next mean, in its standard deviations. */
  public OptionalDouble add(double mean) {
    double deviation = mean - centre;
    OptionalDouble residual =
        hasLast ? OptionalDouble.of((deviation - lag1 * last) / sigma) : OptionalDouble.empty();
    last = deviation;
    hasLast = true;
    return residual;
  }

  /** The next mean does not follow the last one: a stop, a new order, a gap. */
  public void interrupt() {
    hasLast = false;
  }
}
