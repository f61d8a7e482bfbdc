package dev.filmward.film;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The ordered stack of layers that a product is made of, from the outer face inwards, and how the
 * gauge reports them. Reported layers are numbered from 1 without gaps and have different names.
 * Immutable.
 *
 * @param total limits for the sum of all layers: single places across the web, um
 * @param totalAverage limits for the mean total of a sample, um
 */
public record Structure(
    String code,
    String name,
    List<Layer> layers,
    List<ReportedLayer> reported,
    SpecLimits total,
    SpecLimits totalAverage) {

  public Structure {
    layers = List.copyOf(layers);
    reported = List.copyOf(reported);
    if (code.isBlank()) {
      throw new IllegalArgumentException("a structure needs a code");
    }
    if (reported.isEmpty()) {
      throw new IllegalArgumentException("structure " + code + " has no layers");
    }
    Set<String> names = new HashSet<>();
    for (int i = 0; i < reported.size(); i++) {
      ReportedLayer layer = reported.get(i);
      if (layer.position() != i + 1) {
        throw new IllegalArgumentException(
            "structure "
                + code
                + ": reported layer "
                + (i + 1)
                + " says it is "
                + layer.position());
      }
      if (!names.add(layer.name())) {
        throw new IllegalArgumentException(
            "structure " + code + " has two reported layers named \"" + layer.name() + "\"");
      }
    }
  }

  /** The reported layer of that name. */
  public Optional<ReportedLayer> layerNamed(String layerName) {
    return reported.stream().filter(layer -> layer.name().equals(layerName)).findFirst();
  }

  /** Individual limits of a layer or the total; a share has none. */
  public SpecLimits spec(Characteristic characteristic) {
    return switch (characteristic.kind()) {
      case LAYER -> reported.get(characteristic.position() - 1).individual();
      case TOTAL -> total;
      case SHARE -> SpecLimits.NONE;
    };
  }

  /** Limits for the mean of a sample, of a layer or the total; a share has none. */
  public SpecLimits average(Characteristic characteristic) {
    return switch (characteristic.kind()) {
      case LAYER -> reported.get(characteristic.position() - 1).average();
      case TOTAL -> totalAverage;
      case SHARE -> SpecLimits.NONE;
    };
  }
}
