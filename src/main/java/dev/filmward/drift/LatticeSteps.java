package dev.filmward.drift;

import dev.filmward.stats.Normal;

/**
 * Where a normal step {@code step x + drift} leads on a lattice: weights of lattice points such
 * that a function linear between them has its exact mean, also when only some x are let through.
 * The weights of whole cells are the same from every point and computed once. Immutable.
 */
final class LatticeSteps {
  private static final double REACH = 6;

  private final double step;
  private final double drift;
  private final double spacing;
  private final int first;
  private final double[] mass;
  private final double[] moment;

  /** Takes weights of points by their offset from where the step began. */
  interface Sink {
    void accept(int offset, double weight);
  }

  LatticeSteps(double step, double drift, double spacing) {
    this.step = step;
    this.drift = drift;
    this.spacing = spacing;
    this.first = Math.min(0, (int) Math.floor((drift - REACH * step) / spacing));
    int cells = (int) Math.ceil((drift + REACH * step) / spacing) - first;
    mass = new double[cells];
    moment = new double[cells];
    for (int cell = 0; cell < cells; cell++) {
      mass[cell] = mass(edge(cell), edge(cell + 1));
      moment[cell] = moment(edge(cell), edge(cell + 1));
    }
  }

  double spacing() {
    return spacing;
  }

  /** The lowest offset, at most 0. */
  int first() {
    return first;
  }

  /** The highest offset. */
  int last() {
    return first + mass.length;
  }

  /** All weights of steps whose x lies between the two. */
  void forEach(double lower, double upper, Sink sink) {
    for (int cell = 0; cell < mass.length; cell++) {
      double a = edge(cell);
      double b = edge(cell + 1);
      if (a >= lower && b <= upper) {
        split(cell, mass[cell], moment[cell], sink);
      } else if (b > lower && a < upper) {
        double left = Math.max(a, lower);
        double right = Math.min(b, upper);
        split(cell, mass(left, right), moment(left, right), sink);
      }
    }
  }

  /** Shares the mass in a cell between its ends, so that its centre of mass stays. */
  private void split(int cell, double massInCell, double momentInCell, Sink sink) {
    double upperEnd = (momentInCell - edge(cell) * massInCell) * step / spacing;
    sink.accept(first + cell, massInCell - upperEnd);
    sink.accept(first + cell + 1, upperEnd);
  }

  private double edge(int cell) {
    return ((first + cell) * spacing - drift) / step;
  }

  private static double mass(double a, double b) {
    return Normal.STANDARD.below(b) - Normal.STANDARD.below(a);
  }

  private static double moment(double a, double b) {
    return Normal.density(a) - Normal.density(b);
  }
}
