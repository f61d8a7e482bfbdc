package dev.filmward.gauge.screen;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Role;
import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Structures and samples for tests of screening. */
final class WorkedFilm {
  /** PE 25 / tie 4 / EVOH 5 / tie 4 / PE 42 um at 1950, 1980, 2700, 1980 and 1950 m/s. */
  static final double[] TRUE_UM = {25, 4, 5, 4, 42};

  static final double[] VELOCITY_MPS = {1950, 1980, 2700, 1980, 1950};

  private WorkedFilm() {}

  static Structure structure() {
    return structure("BAG-80", TRUE_UM, VELOCITY_MPS);
  }

  static Structure structure(String code, double[] targetUm, double[] velocityMps) {
    List<ReportedLayer> layers = new ArrayList<>();
    for (int i = 0; i < targetUm.length; i++) {
      SpecLimits spec = SpecLimits.of(0.8 * targetUm[i], targetUm[i], 1.2 * targetUm[i]);
      Layer layer =
          new Layer(
              "Layer " + (i + 1),
              Role.CORE,
              Optional.empty(),
              spec,
              SpecLimits.NONE,
              OptionalDouble.empty(),
              Optional.empty(),
              OptionalDouble.of(velocityMps[i]),
              OptionalDouble.of(4 * targetUm[i]));
      layers.add(new ReportedLayer(i + 1, layer.name(), List.of(layer), spec, SpecLimits.NONE));
    }
    return new Structure(
        code,
        code,
        layers.stream().flatMap(layer -> layer.members().stream()).toList(),
        layers,
        SpecLimits.NONE,
        SpecLimits.NONE);
  }

  /** One lane; NaN where blank. */
  static Sample oneLane(double... um) {
    double[][] column = new double[um.length][];
    for (int i = 0; i < um.length; i++) {
      column[i] = new double[] {um[i]};
    }
    return new Sample(
        new SampleKey("Blown 1", "BAG-80", "R1", "S1"), Instant.EPOCH, new int[] {1}, column);
  }

  /** The same in five lanes. */
  static Sample fiveLanes(int index, double[][] byLane) {
    int layers = byLane[0].length;
    double[][] um = new double[layers][byLane.length];
    int[] lanes = new int[byLane.length];
    for (int lane = 0; lane < byLane.length; lane++) {
      lanes[lane] = lane + 1;
      for (int layer = 0; layer < layers; layer++) {
        um[layer][lane] = byLane[lane][layer];
      }
    }
    return new Sample(
        new SampleKey("Blown 1", "BAG-80", "R1", "S" + index),
        Instant.EPOCH.plusSeconds(900L * index),
        lanes,
        um);
  }
}
