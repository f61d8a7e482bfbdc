package dev.filmward.report.paper.drawing;

/** The lowest and the highest of finite values; others change nothing. Immutable. */
record Extent(double low, double high) {
  static final Extent NONE = new Extent(Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);

  Extent with(double value) {
    return Double.isFinite(value) ? new Extent(Math.min(low, value), Math.max(high, value)) : this;
  }

  Extent with(double[] values) {
    Extent extent = this;
    for (double value : values) {
      extent = extent.with(value);
    }
    return extent;
  }

  boolean isEmpty() {
    return !(low <= high);
  }
}
