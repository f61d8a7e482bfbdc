package dev.filmward.pipeline;

import dev.filmward.composition.LayerPair;
import java.util.List;

/**
 * How the layers of a structure on a line move together.
 *
 * @param samples in which at least one lane was read whole
 * @param names of the reported layers by position
 */
public record FilmCorrelations(
    String line, String structure, long samples, List<String> names, List<LayerPair> pairs) {
  public FilmCorrelations {
    names = List.copyOf(names);
    pairs = List.copyOf(pairs);
  }

  public String name(int position) {
    return names.get(position - 1);
  }
}
