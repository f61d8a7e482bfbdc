package dev.filmward.simulate;

import java.util.List;

/**
 * How one reported layer behaves while nothing happens. Fractions are of the layer's mean.
 * Immutable.
 *
 * @param meanUm what the line makes, which need not be the target
 * @param residual standard deviation of a single reading about its sample and lane
 * @param between standard deviation of the samples' levels
 * @param lanes steady deviation of each lane, first lane first
 */
record LayerModel(double meanUm, double residual, double between, List<Double> lanes) {

  LayerModel {
    lanes = List.copyOf(lanes);
    if (!(meanUm > 0) || !Double.isFinite(meanUm)) {
      throw new IllegalArgumentException("a layer is thicker than zero, not " + meanUm);
    }
    if (!(residual >= 0 && residual < 0.2) || !(between >= 0 && between < 0.2)) {
      throw new IllegalArgumentException(
          "standard deviations are fractions from 0 to 0.2, not " + residual + ", " + between);
    }
  }
}
