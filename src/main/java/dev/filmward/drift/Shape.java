package dev.filmward.drift;

/** The two ways in which a level changes, and where in a series a change may be looked for. */
enum Shape {
  /** From one level to another; at least five samples on either side, so that it is no outlier. */
  STEP(2, 5, 5) {
    @Override
    double at(double sinceChange) {
      return 1;
    }
  },
  /** From a level into a straight line; at least twelve samples of it. */
  RAMP(3, 0, 12) {
    @Override
    double at(double sinceChange) {
      return sinceChange;
    }
  };

  private final int parameters;
  private final int fewestBefore;
  private final int fewestAfter;

  Shape(int parameters, int fewestBefore, int fewestAfter) {
    this.parameters = parameters;
    this.fewestBefore = fewestBefore;
    this.fewestAfter = fewestAfter;
  }

  /** Value of the regressor at a time after the change; before the change it is 0. */
  abstract double at(double sinceChange);

  /**
   * How many fitted parameters bend the residuals; a step's place bends them too little to tell.
   */
  int parameters() {
    return parameters;
  }

  /** Index of the first sample that a change may begin with. */
  int first() {
    return fewestBefore;
  }

  int last(int size) {
    return size - fewestAfter;
  }

  double[] regressor(Window window, int from) {
    double[] times = window.times;
    double[] values = new double[times.length];
    for (int t = from; t < times.length; t++) {
      values[t] = at(times[t] - times[from]);
    }
    return values;
  }

  static Regression regression(Window window, double[] regressor, int from) {
    return new Regression(
        window,
        Ar1Product.of(regressor, window.ones, from),
        Ar1Product.of(regressor, regressor, from),
        Ar1Product.of(regressor, window.means, from));
  }
}
