package dev.filmward.gauge.calibration;

/**
 * Turns a thickness as the gauge exported it into the one that another velocity and zero offset
 * give: {@code corrected = factor * exported + offset}. Immutable.
 *
 * <p>The time of flight is what a gauge measures and what stays. With {@code t = c (tau - tau0) /
 * 2}, for the old and the new pair, {@code t_new = t_old c_new / c_old + c_new (tau0_old -
 * tau0_new) / 2}: exact for a layer whose echoes were taken for the right ones. Source: the
 * pulse-echo equation, as in ASTM E797/E797M (from memory).
 *
 * @param factor new over old velocity, above 0
 * @param offsetUm what another zero offset adds, um; it belongs to the first layer, whose time of
 *     flight holds the zero offset
 */
public record Scale(double factor, double offsetUm) {
  /** Leaves a reading as it was exported, to the bit. */
  public static final Scale AS_EXPORTED = new Scale(1, 0);

  private static final double UM_PER_NS_AND_MPS = 1 / 2000.0;

  public Scale {
    if (!(factor > 0) || !Double.isFinite(factor) || !Double.isFinite(offsetUm)) {
      throw new IllegalArgumentException(
          "readings cannot be multiplied by " + factor + " and moved by " + offsetUm + " um");
    }
  }

  /** What leads from one pair of velocity and zero offset to another. */
  public static Scale between(Velocity before, Velocity after) {
    double moved = after.mps() * (before.offsetNs() - after.offsetNs()) * UM_PER_NS_AND_MPS;
    return new Scale(after.mps() / before.mps(), moved);
  }

  public double of(double um) {
    return factor * um + offsetUm;
  }

  /** Whether it leaves readings as they are. */
  public boolean isAsExported() {
    return factor == 1 && offsetUm == 0;
  }
}
