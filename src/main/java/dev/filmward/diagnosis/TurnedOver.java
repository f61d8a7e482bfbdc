package dev.filmward.diagnosis;

/**
 * Whether layers read like the usual film upside down: by squared distances in parts of {@value
 * #SPREAD}, of films that are not the same from both sides.
 */
final class TurnedOver {
  private static final double SPREAD = 0.05;
  private static final double FEWEST_APART = 50;

  private TurnedOver() {}

  /**
   * Notes by how much the film is nearer to itself upside down.
   *
   * @param moves by layer, as fractions of the usual thickness
   */
  static void note(Findings findings, double[] usualUm, double[] moves) {
    double upright = 0;
    double turned = 0;
    double apart = 0;
    for (int i = 0; i < usualUm.length; i++) {
      double other = usualUm[usualUm.length - 1 - i];
      upright += squared(moves[i]);
      turned += squared(usualUm[i] * (1 + moves[i]) / other - 1);
      apart += squared(usualUm[i] / other - 1);
    }
    if (apart >= FEWEST_APART) {
      findings.put(Statistic.UPSIDE_DOWN, upright - turned);
    }
  }

  private static double squared(double part) {
    return part / SPREAD * (part / SPREAD);
  }
}
