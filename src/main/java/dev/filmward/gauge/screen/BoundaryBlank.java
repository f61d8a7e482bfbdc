package dev.filmward.gauge.screen;

import java.util.ArrayList;
import java.util.List;

/**
 * A boundary that was not found by a gauge that keeps places: the layer before it reads like both,
 * the one behind it is blank, the others are right. Immutable.
 *
 * @param after position of the layer before the boundary
 */
record BoundaryBlank(int after) implements Misreading {

  /** All ways; that of the last boundary is also one of {@link BoundaryLost}. */
  static List<Misreading> all(int layers) {
    List<Misreading> ways = new ArrayList<>();
    for (int after = 1; after < layers - 1; after++) {
      ways.add(new BoundaryBlank(after));
    }
    return ways;
  }

  @Override
  public Misread kind() {
    return Misread.BOUNDARY_NOT_FOUND;
  }

  @Override
  public List<Integer> positions() {
    return List.of(after, after + 1);
  }

  @Override
  public double[] exportedNs(double[] filmNs, double[] readNs) {
    double[] exported = filmNs.clone();
    exported[after - 1] += filmNs[after];
    exported[after] = Double.NaN;
    return exported;
  }

  @Override
  public double rarity() {
    return 1;
  }

  @Override
  public boolean isOfTheWholeSample() {
    return false;
  }

  @Override
  public String words() {
    return "Layer "
        + after
        + " reads like layers "
        + after
        + " and "
        + (after + 1)
        + " together in time of flight, and layer "
        + (after + 1)
        + " is blank";
  }
}
