package dev.filmward.rule.price;

import dev.filmward.chart.EwmaDesign;
import dev.filmward.stats.Normal;
import java.util.Set;
import java.util.TreeSet;

/**
 * Run length of an exponentially weighted moving average, from the centre line on and with
 * asymptotic limits, for independent normal points whose mean is off the centre line by a shift, in
 * standard deviations of a point; alone or together with a limit for single points. (Exact limits
 * are narrower for the first points, so that both a true and a false alarm come a little sooner.)
 *
 * <p>The integral over the average is taken by Gauss nodes, in three panels where a limit for
 * points cuts it; 9 digits alone, 6 with a limit for points. All methods are pure.
 *
 * <p>Source: S. V. Crowder, A simple method for studying run-length distributions of exponentially
 * weighted moving average charts, Technometrics 29 (1987) 401; J. M. Lucas and M. S. Saccucci,
 * Technometrics 32 (1990) 1.
 */
public final class EwmaRunLength {
  private static final GaussLegendre NODES = new GaussLegendre(48);
  private static final GaussLegendre STEPS = new GaussLegendre(64);

  private final EwmaDesign design;
  private final double shift;
  private final double pointLimit;
  private final double[] panels;

  private EwmaRunLength(EwmaDesign design, double shift, double pointLimit) {
    this.design = design;
    this.shift = shift;
    this.pointLimit = pointLimit;
    this.panels = panels(design, pointLimit);
  }

  /** Of the average alone. */
  public static RunLength of(EwmaDesign design, double shift) {
    return withPointLimit(design, Double.POSITIVE_INFINITY, shift);
  }

  /** Of the average and of single points beyond a limit, whichever comes first. */
  public static RunLength withPointLimit(EwmaDesign design, double pointLimit, double shift) {
    if (!(pointLimit > 0) || !Double.isFinite(shift)) {
      throw new IllegalArgumentException(
          "no run length for a limit of " + pointLimit + " and a shift of " + shift);
    }
    return new EwmaRunLength(design, shift, pointLimit).runLength();
  }

  /** Ends of the parts of (-limit, limit) within which survival is smooth. */
  private static double[] panels(EwmaDesign design, double pointLimit) {
    double limit = design.asymptoticLimit();
    Set<Double> ends = new TreeSet<>(Set.of(-limit, limit));
    double bend = (limit - design.lambda() * pointLimit) / (1 - design.lambda());
    if (Math.abs(bend) < limit) {
      ends.add(bend);
      ends.add(-bend);
    }
    return ends.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private RunLength runLength() {
    int parts = panels.length - 1;
    double[][] matrix = new double[parts * NODES.points()][];
    for (int part = 0; part < parts; part++) {
      double width = panels[part + 1] - panels[part];
      for (int i = 0; i < NODES.points(); i++) {
        matrix[part * NODES.points() + i] = row(panels[part] + width * NODES.node(i));
      }
    }
    return new LinearChain(matrix, row(0)).runLength();
  }

  /** Where the average goes from a place. */
  private double[] row(double from) {
    double[] row = new double[(panels.length - 1) * NODES.points()];
    double middle = (1 - design.lambda()) * from;
    double reach = design.lambda() * pointLimit;
    for (int part = 0; part + 1 < panels.length; part++) {
      double low = Math.max(panels[part], middle - reach);
      double high = Math.min(panels[part + 1], middle + reach);
      if (low < high) {
        addIntegral(row, part, new double[] {low, high}, middle);
      }
    }
    return row;
  }

  private void addIntegral(double[] row, int part, double[] span, double middle) {
    double width = panels[part + 1] - panels[part];
    for (int k = 0; k < STEPS.points(); k++) {
      double to = span[0] + (span[1] - span[0]) * STEPS.node(k);
      double density = Normal.density((to - middle) / design.lambda() - shift) / design.lambda();
      double[] coefficients = NODES.coefficients((to - panels[part]) / width);
      for (int i = 0; i < coefficients.length; i++) {
        row[part * NODES.points() + i] +=
            STEPS.weight(k) * (span[1] - span[0]) * density * coefficients[i];
      }
    }
  }
}
