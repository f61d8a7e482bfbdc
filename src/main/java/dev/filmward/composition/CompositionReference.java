package dev.filmward.composition;

import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The usual composition of a film: means and covariances of the total and of the logarithms of the
 * layers, frozen from a baseline. Immutable.
 */
public final class CompositionReference implements Serializable {
  private static final long serialVersionUID = 1L;

  private final double[] means;
  private final double[][] covariance;
  private final TSquaredDesign design;

  CompositionReference(double[] means, double[][] covariance, TSquaredDesign design) {
    this.means = means.clone();
    this.covariance = Arrays.stream(covariance).map(double[]::clone).toArray(double[][]::new);
    this.design = design;
  }

  public int layers() {
    return design.width();
  }

  /** Of the distance in total and all ratios. */
  public TSquaredDesign design() {
    return design;
  }

  /** Mean of the total in micrometres. */
  public double totalUm() {
    return means[0];
  }

  /** Positions of all layers, from 1. */
  List<Integer> positions() {
    return IntStream.rangeClosed(1, layers()).boxed().toList();
  }

  TSquaredReference seen(LayerView view) {
    return new TSquaredReference(view.of(means), view.of(covariance), design.ofWidth(view.width()));
  }

  /** Distance of a sample, given by total and logarithms, in what is looked at. */
  double tSquared(LayerView view, double[] vector) {
    return seen(view).tSquared(view.of(vector));
  }

  /** How far a sample is off in the one number that is looked at, in standard deviations. */
  double z(LayerView view, double[] vector) {
    double distance = view.of(vector)[0] - view.of(means)[0];
    return distance == 0 ? 0 : distance / Math.sqrt(view.of(covariance)[0][0]);
  }
}
