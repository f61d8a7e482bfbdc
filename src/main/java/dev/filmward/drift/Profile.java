package dev.filmward.drift;

/**
 * A change of one shape, fitted at every sample that it may begin with: how well each place
 * explains the means, each with the noise's coefficient that its own residuals show. Immutable.
 *
 * <p>Source: D. Siegmund, Confidence sets in change-point problems, International Statistical
 * Review 56 (1988) 31, for the set of places whose likelihood is near the best.
 */
final class Profile {
  private final Window window;
  private final Shape shape;
  private final Regression[] regressions;
  private final LineFit[] fits;
  private final int best;
  private final TubeBound bound;

  Profile(Window window, Shape shape) {
    this.window = window;
    this.shape = shape;
    int count = shape.last(window.size()) - shape.first() + 1;
    regressions = new Regression[count];
    fits = new LineFit[count];
    bound = new TubeBound(window);
    for (int i = 0; i < count; i++) {
      int from = shape.first() + i;
      double[] regressor = shape.regressor(window, from);
      regressions[i] = Shape.regression(window, regressor, from);
      fits[i] = regressions[i].fit(shape.parameters());
      bound.add(regressor, from);
    }
    best = indexOfBest();
  }

  private int indexOfBest() {
    int index = 0;
    for (int i = 1; i < fits.length; i++) {
      if (fits[i].squares() < fits[index].squares()) {
        index = i;
      }
    }
    return index;
  }

  Window window() {
    return window;
  }

  Shape shape() {
    return shape;
  }

  /** How many places there are. */
  int places() {
    return fits.length;
  }

  int best() {
    return best;
  }

  LineFit fit(int place) {
    return fits[place];
  }

  /** The fit at a place with a coefficient given. */
  LineFit fitAt(int place, double phi) {
    return regressions[place].fitAt(phi);
  }

  /** Index in the series of the first sample of a change at a place. */
  int sample(int place) {
    return shape.first() + place;
  }

  /** Twice the logarithm of the likelihood that a place lacks of the best one. */
  double deficit(int place) {
    return (window.size() - 3) * Math.log(fits[place].squares() / fits[best].squares());
  }

  /**
   * Probability of so good a fit somewhere if nothing changed. The likelihood already allows for a
   * spread that was estimated; twice the degrees of {@link LongRun} allow for the rest, as
   * simulation confirms from 60 samples on.
   */
  double p() {
    LineFit fit = fits[best];
    double level = Regression.levelSquares(window, Regression.levelPhi(window));
    double gain = (window.size() - 3) * Math.log(level / fit.squares());
    double degrees = 2 * LongRun.degrees(window.size(), shape.parameters(), fit.phi());
    return gain > 0 ? bound.tail(Math.sqrt(gain), degrees) : 1;
  }
}
