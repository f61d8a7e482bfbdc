package dev.filmward.drift;

import java.util.concurrent.atomic.AtomicReferenceArray;

/**
 * How much logarithm of likelihood a place may lack and still belong to the 95 % interval for a
 * step's time, by the step's size (in standard deviations of the noise) and the noise's lag-1
 * coefficient. {@link StepPlaceLaw} at the nodes of a table, each computed when first asked for and
 * then kept; linear in between. Safe for many threads.
 */
final class StepPlaceLimits {
  /** No limit is greater. */
  static final double GREATEST = 9;

  private static final double CONFIDENCE = 0.95;
  private static final double[] SIZES = {0.5, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4};
  private static final double[] PHIS = {-0.8, -0.6, -0.4, -0.2, 0, 0.2, 0.4, 0.6, 0.8, 0.9};

  private static final AtomicReferenceArray<Double> NODES =
      new AtomicReferenceArray<>(SIZES.length * PHIS.length);

  private StepPlaceLimits() {}

  static double of(double size, double phi) {
    int row = cell(PHIS, phi);
    double part = part(PHIS, row, phi);
    return (1 - part) * ofRow(row, size) + part * ofRow(row + 1, size);
  }

  private static double ofRow(int row, double size) {
    int column = cell(SIZES, size);
    double part = part(SIZES, column, size);
    return (1 - part) * node(row, column) + part * node(row, column + 1);
  }

  private static int cell(double[] nodes, double value) {
    int cell = 0;
    while (cell < nodes.length - 2 && nodes[cell + 1] <= value) {
      cell++;
    }
    return cell;
  }

  private static double part(double[] nodes, int cell, double value) {
    double part = (value - nodes[cell]) / (nodes[cell + 1] - nodes[cell]);
    return Math.max(0, Math.min(1, part));
  }

  private static double node(int row, int column) {
    int index = row * SIZES.length + column;
    Double known = NODES.get(index);
    if (known != null) {
      return known;
    }
    double phi = PHIS[row];
    double size = SIZES[column] / Math.sqrt(1 - phi * phi);
    double computed = new StepPlaceLaw(size, phi).quantile(CONFIDENCE);
    NODES.set(index, computed);
    return computed;
  }
}
