package dev.filmward.rule.price;

/**
 * Nodes and weights of Gauss and Legendre on 0 to 1, and the polynomials through values at the
 * nodes. Immutable.
 *
 * <p>Source: Abramowitz and Stegun (1964), 25.4.29, nodes by Newton's method; J.-P. Berrut and L.
 * N. Trefethen, Barycentric Lagrange interpolation, SIAM Review 46 (2004) 501.
 */
final class GaussLegendre {
  private final double[] nodes;
  private final double[] weights;
  private final double[] barycentric;

  GaussLegendre(int points) {
    nodes = new double[points];
    weights = new double[points];
    barycentric = new double[points];
    for (int i = 0; i < points; i++) {
      place(i, points);
    }
  }

  private void place(int i, int n) {
    double x = Math.cos(Math.PI * (i + 0.75) / (n + 0.5));
    double slope = 1;
    for (int step = 0; step < 100; step++) {
      double previous = 1;
      double value = x;
      for (int k = 2; k <= n; k++) {
        double next = ((2 * k - 1) * x * value - (k - 1) * previous) / k;
        previous = value;
        value = next;
      }
      slope = n * (x * value - previous) / (x * x - 1);
      double change = value / slope;
      x -= change;
      if (Math.abs(change) < 1e-16) {
        break;
      }
    }
    int from = n - 1 - i;
    nodes[from] = (1 + x) / 2;
    weights[from] = 1 / ((1 - x * x) * slope * slope);
    barycentric[from] = (from % 2 == 0 ? 1 : -1) * Math.sqrt((1 - x * x) * weights[from]);
  }

  int points() {
    return nodes.length;
  }

  double node(int i) {
    return nodes[i];
  }

  double weight(int i) {
    return weights[i];
  }

  /** How much the value at each node counts for the interpolated value at t. */
  double[] coefficients(double t) {
    double[] coefficients = new double[nodes.length];
    double sum = 0;
    for (int i = 0; i < nodes.length; i++) {
      if (t == nodes[i]) {
        coefficients = new double[nodes.length];
        coefficients[i] = 1;
        return coefficients;
      }
      coefficients[i] = barycentric[i] / (t - nodes[i]);
      sum += coefficients[i];
    }
    for (int i = 0; i < nodes.length; i++) {
      coefficients[i] /= sum;
    }
    return coefficients;
  }

  /** How much the value at each node counts for the integral from 0 to t. */
  double[] integralUpTo(double t) {
    double[] integral = new double[nodes.length];
    for (int j = 0; j < nodes.length; j++) {
      double[] coefficients = coefficients(t * nodes[j]);
      for (int i = 0; i < nodes.length; i++) {
        integral[i] += t * weights[j] * coefficients[i];
      }
    }
    return integral;
  }
}
