package dev.filmward.diagnosis;

/**
 * How a level moves from a sample on: 0 before, towards 1 at the end. Times are minutes.
 *
 * @param from index of the first sample after a step, or with which a drift begins
 * @param to index at which a drift that levels off has arrived, or from which the level is back
 */
record Course(Kind kind, int from, int to) {

  /** Its shape. */
  enum Kind {
    STEP,
    DRIFT,
    /** A drift that levels off. */
    LEVELLING,
    /** A drift that ends all at once, back where it began. */
    UNTIL_BACK
  }

  static Course step(int from) {
    return new Course(Kind.STEP, from, from);
  }

  static Course drift(int from) {
    return new Course(Kind.DRIFT, from, Integer.MAX_VALUE);
  }

  boolean isStep() {
    return kind == Kind.STEP;
  }

  double[] regressor(double[] minutes) {
    int n = minutes.length;
    double[] values = new double[n];
    int end =
        switch (kind) {
          case STEP -> from;
          case DRIFT -> n - 1;
          case LEVELLING -> to;
          case UNTIL_BACK -> to - 1;
        };
    for (int t = from; t < n; t++) {
      if (kind == Kind.STEP) {
        values[t] = 1;
      } else if (t <= end) {
        values[t] = (minutes[t] - minutes[from]) / (minutes[end] - minutes[from]);
      } else {
        values[t] = kind == Kind.LEVELLING ? 1 : 0;
      }
    }
    return values;
  }
}
