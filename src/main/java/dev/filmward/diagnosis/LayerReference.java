package dev.filmward.diagnosis;

import java.util.List;

/**
 * How a reported layer usually is: frozen from a baseline (Phase I), not its target.
 *
 * @param meanUm of the means of samples, um
 * @param sigmaUm standard deviation of the means of samples, um
 * @param laneEffectsUm what each lane is usually above the mean across the web, first lane first,
 *     um; empty where that is not known
 */
public record LayerReference(
    int position, double meanUm, double sigmaUm, List<Double> laneEffectsUm) {

  public LayerReference {
    laneEffectsUm = List.copyOf(laneEffectsUm);
    if (!(position >= 1)) {
      throw new IllegalArgumentException("a position counts from 1, not " + position);
    }
    if (!(meanUm > 0) || !Double.isFinite(meanUm)) {
      throw new IllegalArgumentException("a usual thickness is above zero, not " + meanUm);
    }
    if (!(sigmaUm > 0) || !Double.isFinite(sigmaUm)) {
      throw new IllegalArgumentException("a usual spread is above zero, not " + sigmaUm);
    }
    if (!laneEffectsUm.stream().allMatch(Double::isFinite)) {
      throw new IllegalArgumentException("lane effects are finite: " + laneEffectsUm);
    }
  }
}
