package dev.filmward.capability;

/**
 * A thickness as resin and money, at one production and price. A negative thickness costs negative
 * money, which is a risk and no saving. Immutable.
 */
public record ResinCost(
    double um, double gPerM2, double kgPerHour, double moneyPerWeek, ResinPrice price) {

  static ResinCost of(double um, double meanUm, Production production) {
    double density = production.densityGcm3();
    double kgPerHour = production.output().kgPerHour(um, meanUm, density);
    return new ResinCost(
        um,
        um * density,
        kgPerHour,
        kgPerHour * production.hoursPerWeek() * production.price().perKg(),
        production.price());
  }
}
