package dev.filmward.gauge.echo;

import java.util.List;
import java.util.Optional;

/**
 * A family of resins, or another medium around the film, with values to start from. They are no
 * values of a grade: tables of the same family differ by 5 to 10 %, and velocity follows density
 * and crystallinity, so the grade is to be calibrated.
 *
 * @param key short and unique
 * @param aliases names that mean this family, compared without case, spaces and hyphens
 * @param velocityMps range and start, m/s at room temperature
 * @param kelvin change of the velocity with temperature, m/s per K; empty where it is not known
 * @param source where the values come from
 */
public record Resin(
    String key,
    String name,
    List<String> aliases,
    Use use,
    Span velocityMps,
    double densityKgm3,
    Optional<Span> kelvin,
    String source) {

  /** Where it may stand. */
  public enum Use {
    LAYER,
    /** Before the film, and behind it where the film is immersed. */
    LIQUID,
    /** Behind the film. */
    BACKING
  }

  /** From low to high, with a value to start from. */
  public record Span(double low, double start, double high) {
    public Span {
      if (!(low <= start && start <= high)) {
        throw new IllegalArgumentException(low + " <= " + start + " <= " + high + " does not hold");
      }
    }
  }

  public Resin {
    aliases = List.copyOf(aliases);
    if (!(velocityMps.low() > 0) || !(densityKgm3 > 0)) {
      throw new IllegalArgumentException(key + ": velocity and density are above zero");
    }
  }

  /** As it is taken where nobody knows better. */
  public Medium medium() {
    return new Medium(name, velocityMps.start(), densityKgm3);
  }
}
