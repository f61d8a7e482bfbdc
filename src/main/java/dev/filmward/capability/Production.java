package dev.filmward.capability;

/**
 * What turns micrometres into money. Immutable.
 *
 * @param densityGcm3 of the resin, or of the film
 * @param hoursPerWeek in which good film is made, without start-up and change-over
 */
public record Production(
    double densityGcm3, LineOutput output, double hoursPerWeek, ResinPrice price) {
  private static final double HOURS_IN_A_WEEK = 168;

  public Production {
    Positive.check("a density in g/cm3", densityGcm3);
    Positive.check("hours a week", hoursPerWeek);
    if (hoursPerWeek > HOURS_IN_A_WEEK) {
      throw new IllegalArgumentException("a week has 168 hours, not " + hoursPerWeek);
    }
  }
}
