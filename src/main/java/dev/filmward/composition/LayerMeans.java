package dev.filmward.composition;

import dev.filmward.film.Sample;
import java.util.Optional;

/** Takes a sample, gives the mean thickness of each layer over the lanes that were read whole. */
public final class LayerMeans {
  private LayerMeans() {}

  /** In micrometres by position; empty where no lane has all layers, or where one is zero. */
  public static Optional<double[]> of(Sample sample) {
    double[] sums = new double[sample.layers()];
    int lanes = 0;
    for (int lane = 0; lane < sample.laneCount(); lane++) {
      if (isWhole(sample, lane)) {
        lanes++;
        for (int position = 1; position <= sums.length; position++) {
          sums[position - 1] += sample.thicknessUm(position, lane);
        }
      }
    }
    boolean hasRatios = lanes > 0;
    for (int i = 0; i < sums.length; i++) {
      hasRatios &= sums[i] > 0;
      sums[i] /= Math.max(1, lanes);
    }
    return hasRatios ? Optional.of(sums) : Optional.empty();
  }

  private static boolean isWhole(Sample sample, int lane) {
    for (int position = 1; position <= sample.layers(); position++) {
      if (!sample.isMeasured(position, lane)) {
        return false;
      }
    }
    return true;
  }
}
