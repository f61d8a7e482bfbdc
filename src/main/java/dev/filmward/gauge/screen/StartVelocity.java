package dev.filmward.gauge.screen;

import dev.filmward.film.Layer;
import dev.filmward.film.Role;
import java.util.List;
import java.util.Locale;

/**
 * Sound velocities to start with where the structure gives none, m/s, by the family of the resin's
 * name; an unknown resin counts as polyethylene, a tie as the polyethylene it is made of. Handbook
 * tables as remembered (longitudinal, 20 to 25 °C); they differ by 5 to 10 % among each other,
 * which does not matter where readings are compared with readings. Stateless.
 */
final class StartVelocity {
  private static final double TIE = 1980;
  private static final double UNKNOWN = 2000;

  private record Family(String mark, double mps) {}

  /** The first whose mark is in the name counts, so that the longer names come first. */
  private static final List<Family> FAMILIES =
      List.of(
          new Family("MAH", TIE),
          new Family("EVOH", 2700),
          new Family("EVA", 1800),
          new Family("LLDPE", 2000),
          new Family("HDPE", 2430),
          new Family("LDPE", 1950),
          new Family("PET", 2500),
          new Family("PVC", 2380),
          new Family("PP", 2650),
          new Family("PA", 2650),
          new Family("PS", 2340));

  private StartVelocity() {}

  static double mps(Layer layer) {
    String resin = layer.resin().orElse("").toUpperCase(Locale.ROOT);
    return FAMILIES.stream()
        .filter(family -> resin.contains(family.mark))
        .mapToDouble(Family::mps)
        .findFirst()
        .orElse(layer.role() == Role.TIE ? TIE : UNKNOWN);
  }
}
