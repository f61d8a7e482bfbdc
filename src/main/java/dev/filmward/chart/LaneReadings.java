package dev.filmward.chart;

/** The readings of one sample lane by lane, NaN where nothing was measured. */
final class LaneReadings {
  private final double[] readings;
  private final int size;

  private LaneReadings(double[] readings, int size) {
    this.readings = readings;
    this.size = size;
  }

  static LaneReadings of(double[] readings, int lanes) {
    if (readings.length != lanes) {
      throw new IllegalArgumentException(
          "a reading for each of " + lanes + " lanes is needed, not " + readings.length);
    }
    int size = 0;
    for (double reading : readings) {
      if (Double.isInfinite(reading)) {
        throw new IllegalArgumentException("a reading is finite, or NaN if there is none");
      }
      size += Double.isNaN(reading) ? 0 : 1;
    }
    return new LaneReadings(readings, size);
  }

  int size() {
    return size;
  }

  boolean has(int lane) {
    return !Double.isNaN(readings[lane]);
  }

  /** Of the lanes that were measured, about the first one so that a large common part is exact. */
  double mean() {
    double origin = Double.NaN;
    double sum = 0;
    for (double reading : readings) {
      if (!Double.isNaN(reading)) {
        origin = Double.isNaN(origin) ? reading : origin;
        sum += reading - origin;
      }
    }
    return origin + sum / size;
  }
}
