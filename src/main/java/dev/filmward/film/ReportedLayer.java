package dev.filmward.film;

import java.util.List;

/**
 * What the gauge can tell apart: one layer, or neighbours whose boundary reflects nothing. Charts
 * are of reported layers.
 *
 * @param position from 1, from the outer face inwards
 * @param members names of the layers in it, outer first
 */
public record ReportedLayer(
    int position, String name, List<Layer> members, SpecLimits individual, SpecLimits average) {

  public ReportedLayer {
    if (!(position >= 1)) {
      throw new IllegalArgumentException("a position counts from 1, not " + position);
    }
    members = List.copyOf(members);
    if (members.isEmpty()) {
      throw new IllegalArgumentException("reported layer " + position + " has no layers in it");
    }
  }
}
