package dev.filmward.simulate;

import dev.filmward.film.Structure;
import java.util.List;

/**
 * How a structure behaves on a line while nothing happens, and how finely the gauge reads it.
 * Immutable.
 *
 * @param layers one for each reported layer, outer face first; all have the same lanes
 * @param stability what all layers have in common
 * @param stepsPerUm readings are rounded to whole multiples of 1/stepsPerUm um
 */
record FilmModel(
    Structure structure, List<LayerModel> layers, Stability stability, int stepsPerUm) {

  FilmModel {
    layers = List.copyOf(layers);
    if (layers.size() != structure.reported().size()) {
      throw new IllegalArgumentException(
          structure.code()
              + " reports "
              + structure.reported().size()
              + " layers but "
              + layers.size()
              + " are described");
    }
    int lanes = layers.get(0).lanes().size();
    if (lanes < 1 || layers.stream().anyMatch(layer -> layer.lanes().size() != lanes)) {
      throw new IllegalArgumentException("every layer needs the same lanes, at least one");
    }
    if (!(stepsPerUm >= 1)) {
      throw new IllegalArgumentException("a gauge reads at least whole um, not 1/" + stepsPerUm);
    }
  }

  int laneCount() {
    return layers.get(0).lanes().size();
  }

  /** To the gauge's resolution; never to zero, which a gauge does not call a thickness. */
  double rounded(double um) {
    return Math.max(1, Math.rint(um * stepsPerUm)) / stepsPerUm;
  }

  /**
   * @param place standard deviation of what all layers of one place have in common, as a fraction:
   *     where the film is drawn thin, every layer is thin
   * @param memory correlation of a layer's level with that of the sample before, the coefficient of
   *     a first-order autoregression
   * @param missing chance that a reading is not measured
   */
  record Stability(double place, double memory, double missing) {

    Stability {
      if (!(place >= 0 && place < 0.2)) {
        throw new IllegalArgumentException("place must be a fraction below 0.2, not " + place);
      }
      if (!(memory >= 0 && memory < 1)) {
        throw new IllegalArgumentException("memory must be from 0 to below 1, not " + memory);
      }
      if (!(missing >= 0 && missing < 1)) {
        throw new IllegalArgumentException("a chance below 1 is needed, not " + missing);
      }
    }
  }
}
