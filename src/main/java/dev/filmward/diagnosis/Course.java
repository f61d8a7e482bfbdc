package dev.filmward.diagnosis;

/**
 * How a level moves from a sample on: 0 before, towards 1 in the end.
 *
 * @param from index of the first sample after a step, or with which a drift begins
 * @param to where a drift that levels off has gone 63 % of its way, or the first sample that is
 *     back
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
    double[] values = new double[minutes.length];
    for (int t = from; t < values.length; t++) {
      values[t] = at(minutes, t);
    }
    return values;
  }

  private double at(double[] minutes, int t) {
    double since = minutes[t] - minutes[from];
    return switch (kind) {
      case STEP -> 1;
      case DRIFT -> since / (minutes[minutes.length - 1] - minutes[from]);
      case LEVELLING -> -Math.expm1(-since / (minutes[to] - minutes[from]));
      case UNTIL_BACK -> t < to ? since / (minutes[to - 1] - minutes[from]) : 0;
    };
  }
}
