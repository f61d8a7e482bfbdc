package dev.filmward.stats;

/**
 * An analysis of variance in two parts. Immutable.
 *
 * @param between squares of the groups' means about the grand mean
 * @param within squares of the numbers about their group's mean
 */
public record AnovaTable(Part between, Part within) {

  /** A sum of squares and its degrees of freedom, at least 1. */
  public record Part(double sumOfSquares, long degrees) {
    public Part {
      if (!(sumOfSquares >= 0) || degrees < 1) {
        throw new IllegalArgumentException(
            "not a part of variance: " + sumOfSquares + " with " + degrees + " degrees");
      }
    }

    public double meanSquare() {
      return sumOfSquares / degrees;
    }
  }

  /** Ratio of the mean squares; infinite where there is no spread within groups. */
  public double f() {
    return between.meanSquare() / within.meanSquare();
  }

  /** Probability of a greater F if all groups have one mean. */
  public double p() {
    return new FisherF(between.degrees, within.degrees).above(f());
  }

  /** Share of the squares that the groups explain. */
  public double rSquared() {
    return between.sumOfSquares / (between.sumOfSquares + within.sumOfSquares);
  }

  public double residualDeviation() {
    return Math.sqrt(within.meanSquare());
  }
}
