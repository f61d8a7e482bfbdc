package dev.filmward.pipeline;

import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.gauge.calibration.FilmScalings;
import dev.filmward.gauge.calibration.LayerScalings;
import dev.filmward.gauge.calibration.ScaleStep;
import dev.filmward.gauge.calibration.Scaling;
import dev.filmward.gauge.calibration.TemperatureModel;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Tells which limits were computed of readings at another velocity than the ones that they are
 * drawn over. Readings as exported are one velocity, whatever it was; re-scaled ones are told by
 * theirs, so that readings of a gauge that was set to the calibrated velocity later are the same as
 * re-scaled ones before that. Limits that were carried along fit the readings from which they hold.
 * For one series; immutable.
 */
public final class ScaledLimits {
  private static final double SAME = 1e-9;

  private final List<LayerScalings> layers;
  private final Map<Integer, Integer> carried;

  private ScaledLimits(List<LayerScalings> layers, Map<Integer, Integer> carried) {
    this.layers = List.copyOf(layers);
    this.carried = Map.copyOf(carried);
  }

  /** As it is kept now. */
  public static ScaledLimits of(Tables tables, Series series) {
    return of(tables, series, tables.scalings().of(series.line(), series.structure()));
  }

  static ScaledLimits of(Tables tables, Series series, FilmScalings film) {
    List<LayerScalings> layers =
        series.position() == 0
            ? List.copyOf(film.byPosition().values())
            : List.of(film.of(series.position()));
    Map<Integer, Integer> carried =
        film.byPosition().isEmpty()
            ? Map.of()
            : tables.limits().carried(series.line(), series.structure());
    return new ScaledLimits(layers, carried);
  }

  /**
   * Versions that do not fit, by their number.
   *
   * @param versions first to last
   */
  public Set<Integer> otherwise(List<LimitsVersion> versions) {
    Set<Integer> otherwise = new HashSet<>();
    Instant until = Instant.MAX;
    for (int i = versions.size() - 1; i >= 0; i--) {
      LimitsVersion version = versions.get(i);
      if (version.holdsFrom().isBefore(until) && isOtherwise(version, until)) {
        otherwise.add(version.version());
      }
      until = version.holdsFrom().isBefore(until) ? version.holdsFrom() : until;
    }
    return otherwise;
  }

  private boolean isOtherwise(LimitsVersion version, Instant until) {
    return layers.stream().anyMatch(layer -> isOtherwise(layer, version, until));
  }

  private boolean isOtherwise(LayerScalings layer, LimitsVersion version, Instant until) {
    Set<Look> velocities = new HashSet<>(baseline(layer, version));
    velocities.addAll(between(layer, version.holdsFrom(), until));
    return velocities.size() > 1;
  }

  private Set<Look> baseline(LayerScalings layer, LimitsVersion version) {
    boolean isTrial = version.state() == LimitsState.TRIAL;
    LayerScalings known = isTrial ? layer : layer.asKnownAt(version.decision().at());
    if (carried.containsKey(version.version())) {
      return Set.of(velocity(known, version.holdsFrom()));
    }
    Instant end = version.baseline().to().plusNanos(1000);
    return between(known, version.baseline().from(), end);
  }

  /** Velocities of readings taken from a moment on and before another. */
  private static Set<Look> between(LayerScalings layer, Instant from, Instant until) {
    List<Instant> moments = new ArrayList<>(List.of(from));
    for (Scaling version : layer.versions()) {
      version.steps().stream()
          .map(ScaleStep::holdsFrom)
          .filter(moment -> moment.isAfter(from) && moment.isBefore(until))
          .forEach(moments::add);
    }
    Set<Look> velocities = new HashSet<>();
    moments.forEach(moment -> velocities.add(velocity(layer, moment)));
    return velocities;
  }

  /**
   * How readings are shown.
   *
   * @param velocity in steps too small to matter; 0 for readings as exported
   * @param temperature by which they are corrected
   */
  private record Look(long velocity, Optional<TemperatureModel> temperature) {
    private static final Look AS_EXPORTED = new Look(0, Optional.empty());

    private static Look of(ScaleStep step) {
      return new Look(Math.round(Math.log(step.velocityMps()) / SAME), step.temperature());
    }
  }

  private static Look velocity(LayerScalings layer, Instant moment) {
    return layer.stepAt(moment).map(Look::of).orElse(Look.AS_EXPORTED);
  }
}
