package dev.filmward.simulate;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A structure being put together from its layers, outer face first. Immutable. */
record StructureDraft(String code, String name, List<Layer> layers) {

  static StructureDraft of(String code, String name, LayerDraft... layers) {
    return new StructureDraft(code, name, List.of(layers).stream().map(LayerDraft::layer).toList());
  }

  /** Every layer is reported by itself. */
  Structure reportedEach(SpecLimits total) {
    return reported(total, layers.stream().map(layer -> 1).toList());
  }

  /**
   * @param sizes how many neighbours are reported together, from the outer face inwards
   */
  Structure reported(SpecLimits total, List<Integer> sizes) {
    List<ReportedLayer> groups = new ArrayList<>();
    int from = 0;
    for (int size : sizes) {
      groups.add(group(groups.size() + 1, layers.subList(from, from + size)));
      from += size;
    }
    if (from != layers.size()) {
      throw new IllegalArgumentException(from + " of " + layers.size() + " layers are reported");
    }
    return new Structure(code, name, layers, groups, total, SpecLimits.NONE);
  }

  private static ReportedLayer group(int position, List<Layer> members) {
    return new ReportedLayer(
        position,
        members.stream().map(Layer::name).collect(Collectors.joining(" + ")),
        members,
        SpecLimits.sum(members.stream().map(Layer::individual).toList()),
        SpecLimits.sum(members.stream().map(Layer::average).toList()));
  }
}
