package dev.filmward.gauge.echo;

import dev.filmward.film.Length;
import dev.filmward.film.LengthUnit;

/**
 * Thicknesses as the trade speaks of them, where settings go by them: layers of 1.5 to 2 mil, which
 * it calls 38 and 51 um, gauged at 20 to 125 MHz with the greatest expected thickness set to 3 mil
 * (common practice, no source). 1 mil is 25.4 um exactly, so 1.5 mil is 38.1 um and 2 mil 50.8 um.
 * Stateless.
 */
final class TradeThickness {
  static final double LEAST_MHZ = 20;
  static final double MOST_MHZ = 125;
  static final String PRACTICE = "common practice, no source";

  /** What the greatest expected thickness is set to for layers of 1.5 to 2 mil. */
  static final Length GREATEST = Length.parse("3 mil");

  private static final double THINNEST_MIL = 1.5;
  private static final double THICKEST_MIL = 2;

  private TradeThickness() {}

  /** Whole micrometres, as a thickness is spoken of. */
  static long spokenUm(double thicknessUm) {
    return Math.round(thicknessUm);
  }

  /** Whether a layer is one of those of 1.5 to 2 mil, to the rounding of the words. */
  static boolean isOfPractice(double thicknessUm) {
    long spoken = spokenUm(thicknessUm);
    return spoken >= spokenUm(LengthUnit.MIL.toUm(THINNEST_MIL))
        && spoken <= spokenUm(LengthUnit.MIL.toUm(THICKEST_MIL));
  }

  static boolean isUsualFrequency(double mhz) {
    return mhz >= LEAST_MHZ && mhz <= MOST_MHZ;
  }
}
