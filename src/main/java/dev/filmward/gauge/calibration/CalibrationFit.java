package dev.filmward.gauge.calibration;

import dev.filmward.stats.Moments;
import dev.filmward.stats.WeightedLineSum;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Reference pieces and what a gauge read on them, to velocity and zero offset. um, ns, m/s.
 *
 * <p>One piece gives the velocity: {@code c = 2000 t / (tau - tau0)} with {@code (u(c)/c)² =
 * (u(t)/t)² + (u(tau)/(tau - tau0))²}, the zero offset taken over as it was. Several give both, by
 * weighted least squares of {@code tau = tau0 + (2000 / c) t}; the weights are 1 / variance of tau
 * and of t turned to tau by the slope, found in a few rounds (effective variance). The variance of
 * a mean time of flight comes from the scatter of repeated readings, pooled over the pieces. Where
 * no variance is known (single readings, no uncertainty stated) all weigh the same, and the
 * uncertainties come from what the line leaves over. Reference thicknesses count as independent.
 *
 * <p>Source: JCGM 100:2008, 5.1; effective variance: J. Orear, Am. J. Phys. 50 (1982) 912 (from
 * memory). Stateless.
 */
public final class CalibrationFit {
  private static final double NS_MPS_PER_UM = 2000;
  private static final int ROUNDS = 20;

  private final Velocity before;
  private final List<Point> points = new ArrayList<>();

  private CalibrationFit(List<PieceReadings> pieces, Velocity before) {
    this.before = before;
    double spreadNs = Math.sqrt(pooledVariance(pieces, before));
    for (PieceReadings readings : pieces) {
      Moments moments = moments(readings, before);
      points.add(
          new Point(
              readings.piece().thicknessUm(),
              readings.piece().standardUm(),
              moments.mean(),
              spreadNs / Math.sqrt((double) moments.count())));
    }
  }

  private record Point(double um, double uUm, double ns, double uNs) {
    /** Of the time of flight, with that of the thickness turned to it. */
    private double variance(double slope) {
      return uNs * uNs + slope * slope * uUm * uUm;
    }
  }

  /**
   * Fits.
   *
   * @param before velocity and zero offset that thickness readings were shown at
   * @throws IllegalArgumentException if the readings lead to no velocity
   */
  public static FittedVelocity of(List<PieceReadings> pieces, Velocity before) {
    if (pieces.isEmpty()) {
      throw new IllegalArgumentException("a calibration needs a reference piece at least");
    }
    CalibrationFit fit = new CalibrationFit(pieces, before);
    double first = pieces.get(0).piece().thicknessUm();
    boolean isOne = pieces.stream().allMatch(each -> each.piece().thicknessUm() == first);
    if (isOne && pieces.size() > 1) {
      throw new IllegalArgumentException(
          "pieces of one thickness tell no zero offset; give one of them, or a thicker one too");
    }
    return isOne ? fit.ofOne() : fit.ofSeveral();
  }

  private FittedVelocity ofOne() {
    Point point = points.get(0);
    double flight = point.ns - before.offsetNs();
    if (!(flight > 0)) {
      throw new IllegalArgumentException(
          "the readings are not longer than the zero offset of " + before.offsetNs() + " ns");
    }
    double mps = NS_MPS_PER_UM * point.um / flight;
    double relative = Math.hypot(point.uUm / point.um, point.uNs / flight);
    Velocity found = new Velocity(mps, before.offsetNs());
    return new FittedVelocity(found, mps * relative, 0, 0, OptionalDouble.empty(), 0);
  }

  private FittedVelocity ofSeveral() {
    double slope = NS_MPS_PER_UM / before.mps();
    boolean isKnown = points.stream().allMatch(point -> point.uNs > 0 || point.uUm > 0);
    WeightedLineSum line = line(slope, isKnown);
    for (int round = 0; isKnown && round < ROUNDS; round++) {
      slope = line.slope();
      line = line(slope, isKnown);
    }
    if (!(line.slope() > 0)) {
      throw new IllegalArgumentException(
          "the thicker piece does not read thicker; look at the readings of each piece again");
    }
    return fitted(line, isKnown);
  }

  private WeightedLineSum line(double slope, boolean isKnown) {
    WeightedLineSum line = new WeightedLineSum();
    points.forEach(point -> line.add(point.um, point.ns, isKnown ? 1 / point.variance(slope) : 1));
    return line;
  }

  private static FittedVelocity fitted(WeightedLineSum line, boolean isKnown) {
    double mps = NS_MPS_PER_UM / line.slope();
    double stretch = mps / line.slope();
    double scatter = isKnown ? 1 : line.degrees() > 0 ? line.residualVariance() : 0;
    return new FittedVelocity(
        new Velocity(mps, line.intercept()),
        stretch * Math.sqrt(scatter * line.varianceOfSlope()),
        Math.sqrt(scatter * line.varianceOfIntercept()),
        -stretch * scatter * line.covariance(),
        isKnown && line.degrees() > 0
            ? OptionalDouble.of(line.chiSquare())
            : OptionalDouble.empty(),
        line.degrees());
  }

  private static double pooledVariance(List<PieceReadings> pieces, Velocity before) {
    double squares = 0;
    long degrees = 0;
    for (PieceReadings readings : pieces) {
      Moments moments = moments(readings, before);
      if (moments.count() > 1) {
        squares += moments.sumOfSquares();
        degrees += moments.count() - 1;
      }
    }
    return degrees == 0 ? 0 : squares / degrees;
  }

  private static Moments moments(PieceReadings readings, Velocity before) {
    Moments moments = new Moments();
    for (double ns : readings.flightsNs(before)) {
      moments.add(ns);
    }
    return moments;
  }
}
