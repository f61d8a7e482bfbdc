package dev.filmward.capability;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;

/** Takes a sample, gives a characteristic's value for each lane, NaN where it was not measured. */
public final class LaneValues {
  private LaneValues() {}

  public static double[] of(Sample sample, Characteristic characteristic) {
    double[] values = new double[sample.laneCount()];
    for (int lane = 0; lane < values.length; lane++) {
      values[lane] = value(sample, characteristic, lane);
    }
    return values;
  }

  private static double value(Sample sample, Characteristic characteristic, int lane) {
    return switch (characteristic.kind()) {
      case LAYER -> thickness(sample, characteristic.position(), lane);
      case TOTAL -> total(sample, lane);
      case SHARE -> thickness(sample, characteristic.position(), lane) / total(sample, lane);
    };
  }

  private static double thickness(Sample sample, int position, int lane) {
    return sample.isMeasured(position, lane) ? sample.thicknessUm(position, lane) : Double.NaN;
  }

  /** NaN where one of the layers was not measured. */
  private static double total(Sample sample, int lane) {
    double sum = 0;
    for (int position = 1; position <= sample.layers(); position++) {
      sum += thickness(sample, position, lane);
    }
    return sum;
  }
}
