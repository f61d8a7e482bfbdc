package dev.filmward.gauge.conformity;

/**
 * How uncertainty is taken into account when conformity is stated. Uncertainty counts against
 * whoever makes the statement (ISO 14253-1), so guard bands lie inside the specification.
 */
public enum DecisionRule {
  /** Simple acceptance: at the limit itself up to half of such films may be outside (ILAC-G8). */
  SIMPLE("simple acceptance", 0),
  /** 1.65 standard uncertainties: 95 % at one limit (ISO 14253-1:2017, default; from memory). */
  GUARD_95("guard band 1.65 u", 1.65),
  /** The expanded uncertainty: with k = 2 at most 2.5 % outside at one limit (ILAC-G8). */
  GUARD_EXPANDED("guard band U", Double.NaN);

  private final String words;
  private final double factor;

  DecisionRule(String words, double factor) {
    this.words = words;
    this.factor = factor;
  }

  public String words() {
    return words;
  }

  /**
   * Width of the guard band, in the unit of the uncertainties.
   *
   * @param standard u
   * @param expanded U
   */
  public double guard(double standard, double expanded) {
    return this == GUARD_EXPANDED ? expanded : factor * standard;
  }
}
