package dev.filmward.gauge.calibration;

import dev.filmward.film.Sample;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * How the readings of what a line makes of one structure are re-scaled: versions by the position of
 * the reported layer. A reading that would come out at or below zero counts as not measured.
 * Immutable.
 */
public record FilmScalings(Map<Integer, LayerScalings> byPosition) {
  public static final FilmScalings NONE = new FilmScalings(Map.of());

  public FilmScalings {
    byPosition = Map.copyOf(byPosition);
  }

  public LayerScalings of(int position) {
    return byPosition.getOrDefault(position, LayerScalings.NONE);
  }

  /** The same with one more version for a layer. */
  public FilmScalings and(int position, Scaling next) {
    Map<Integer, LayerScalings> more = new TreeMap<>(byPosition);
    more.put(position, of(position).and(next));
    return new FilmScalings(more);
  }

  /** The sample with its readings re-scaled; the same one where they stay as exported. */
  public Sample of(Sample exported) {
    return isAsExported(exported) ? exported : scaled(exported);
  }

  private boolean isAsExported(Sample exported) {
    Instant takenAt = exported.takenAt();
    return byPosition.values().stream()
        .flatMap(layer -> layer.stepAt(takenAt).stream())
        .allMatch(step -> step.leaves(exported.hasTemperature()));
  }

  private Sample scaled(Sample exported) {
    int[] lanes = new int[exported.laneCount()];
    for (int lane = 0; lane < lanes.length; lane++) {
      lanes[lane] = exported.lane(lane);
    }
    double[][] um = new double[exported.layers()][];
    for (int position = 1; position <= um.length; position++) {
      um[position - 1] = scaled(exported, position);
    }
    Sample scaled = new Sample(exported.key(), exported.takenAt(), lanes, um);
    return exported.hasTemperature() ? scaled.atCelsius(celsius(exported)) : scaled;
  }

  private double[] scaled(Sample exported, int position) {
    Optional<ScaleStep> step = of(position).stepAt(exported.takenAt());
    double[] um = new double[exported.laneCount()];
    for (int lane = 0; lane < um.length; lane++) {
      double corrected =
          exported.isMeasured(position, lane)
              ? corrected(step, exported.thicknessUm(position, lane), exported.celsius(lane))
              : Double.NaN;
      um[lane] = corrected > 0 ? corrected : Double.NaN;
    }
    return um;
  }

  private static double corrected(Optional<ScaleStep> step, double um, OptionalDouble celsius) {
    return step.isPresent() ? step.get().of(um, celsius) : um;
  }

  private static double[] celsius(Sample exported) {
    double[] celsius = new double[exported.laneCount()];
    for (int lane = 0; lane < celsius.length; lane++) {
      celsius[lane] = exported.celsius(lane).orElse(Double.NaN);
    }
    return celsius;
  }
}
