package dev.filmward.gauge.echo;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The echo of one boundary. Immutable.
 *
 * @param before the name of what the sound comes out of
 * @param behind the name of what it meets
 * @param after how many layers of the structure lie before it
 * @param reflection empty where a medium is not known
 * @param strength pressure at the receiver as a share of what came to the film, with the sign of
 *     the echo: the reflection times all ways through and back before it. Absorption and spreading
 *     are not in it, nor is sound that goes to and fro more than once. Empty where a medium on the
 *     way is not known
 */
public record ExpectedEcho(
    Place place,
    String before,
    String behind,
    int after,
    Optional<Reflection> reflection,
    OptionalDouble strength) {
  /** Below this a boundary may be missed (common practice, no source). */
  public static final double WEAK = 0.05;

  /** Below this nobody sees it: report both sides as one (common practice, no source). */
  public static final double UNSEEN = 0.02;

  /** Which boundary it is. */
  public enum Place {
    /** From the couplant into the first layer. */
    FRONT,
    /** Between two reported layers: the gauge is to find it. */
    REPORTED,
    /** Between layers that are reported as one: the gauge is not to see it. */
    WITHIN,
    /** From the last layer into what is behind the film. */
    BACK
  }

  /** How well it can be seen. */
  public enum Sight {
    GOOD("good"),
    WEAK("weak"),
    UNSEEN("too weak to see"),
    UNKNOWN("not known");

    private final String words;

    Sight(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  public Sight sight() {
    if (reflection.isEmpty()) {
      return Sight.UNKNOWN;
    }
    double size = Math.abs(reflection.get().coefficient());
    if (size < UNSEEN) {
      return Sight.UNSEEN;
    }
    return size < WEAK ? Sight.WEAK : Sight.GOOD;
  }

  public Polarity polarity() {
    return reflection.map(Reflection::polarity).orElse(Polarity.UNKNOWN);
  }

  /** The reflection in dB; empty where nothing is known or nothing comes back. */
  public OptionalDouble decibels() {
    return reflection.filter(found -> found.coefficient() != 0).isPresent()
        ? OptionalDouble.of(reflection.get().decibels())
        : OptionalDouble.empty();
  }

  /** The strength in dB against what came to the film. */
  public OptionalDouble strengthDb() {
    return strength.isPresent() && strength.getAsDouble() != 0
        ? OptionalDouble.of(Reflection.decibels(strength.getAsDouble()))
        : OptionalDouble.empty();
  }

  public String name() {
    return before + " to " + behind;
  }
}
