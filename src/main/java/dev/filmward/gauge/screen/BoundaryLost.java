package dev.filmward.gauge.screen;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Boundaries between neighbours that were not found: their times of flight are read as one, the
 * layers behind move up one place, and the last places stay blank. Immutable.
 *
 * @param layers of the film
 * @param after positions of the layers behind which a boundary is missing, ascending
 */
record BoundaryLost(int layers, List<Integer> after) implements Misreading {

  BoundaryLost {
    after = List.copyOf(after);
  }

  /** All ways to miss one or two boundaries. */
  static List<Misreading> all(int layers) {
    List<Misreading> ways = new ArrayList<>();
    for (int first = 1; first < layers; first++) {
      ways.add(new BoundaryLost(layers, List.of(first)));
      for (int second = first + 1; second < layers; second++) {
        ways.add(new BoundaryLost(layers, List.of(first, second)));
      }
    }
    return ways;
  }

  @Override
  public Misread kind() {
    return Misread.BOUNDARY_NOT_FOUND;
  }

  @Override
  public List<Integer> positions() {
    return IntStream.rangeClosed(after.get(0), layers).boxed().toList();
  }

  @Override
  public double[] exportedNs(double[] filmNs, double[] readNs) {
    double[] exported = new double[filmNs.length];
    Arrays.fill(exported, Double.NaN);
    int place = 0;
    double sum = 0;
    for (int position = 1; position <= filmNs.length; position++) {
      sum += filmNs[position - 1];
      if (!after.contains(position)) {
        exported[place++] = sum;
        sum = 0;
      }
    }
    return exported;
  }

  @Override
  public double rarity() {
    return after.size();
  }

  @Override
  public boolean isOfTheWholeSample() {
    return false;
  }

  @Override
  public String words() {
    return after.size() == 1
        ? "Layer "
            + after.get(0)
            + " reads like layers "
            + after.get(0)
            + " and "
            + (after.get(0) + 1)
            + " together in time of flight, and the next ones moved up one place"
        : "The readings fit a film in which the boundaries behind layers "
            + after.get(0)
            + " and "
            + after.get(1)
            + " were not found";
  }
}
