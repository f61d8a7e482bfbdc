package dev.filmward.intake;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Role;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Structures for tests. */
final class Film {
  /** Three reported layers, two of them of two layers each. */
  static final Structure LID =
      structure("LID-60", "Outer skin + Tie", "Barrier", "Inner tie + Seal");

  /** Five layers, each reported by itself. */
  static final Structure BAR = structure("BAR-80", "Skin", "Tie", "Barrier", "Core µ", "Seal");

  static final Structures BOTH = new Structures(List.of(LID, BAR));

  private Film() {}

  /** Without limits; names of reported layers are those of their members joined by " + ". */
  static Structure structure(String code, String... names) {
    List<Layer> layers = new ArrayList<>();
    List<ReportedLayer> reported = new ArrayList<>();
    for (String name : names) {
      List<Layer> members = Arrays.stream(name.split(" \\+ ")).map(Film::layer).toList();
      layers.addAll(members);
      reported.add(
          new ReportedLayer(reported.size() + 1, name, members, SpecLimits.NONE, SpecLimits.NONE));
    }
    return new Structure(code, code, layers, reported, SpecLimits.NONE, SpecLimits.NONE);
  }

  private static Layer layer(String name) {
    return new Layer(
        name,
        Role.CORE,
        Optional.empty(),
        SpecLimits.NONE,
        SpecLimits.NONE,
        OptionalDouble.empty(),
        Optional.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }
}
