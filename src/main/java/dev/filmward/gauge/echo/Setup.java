package dev.filmward.gauge.echo;

import dev.filmward.gauge.Gauge;
import java.util.List;

/**
 * A gauge before a film: how it is coupled, through what, and what is behind the film. Immutable.
 *
 * @param couplant the liquid that sound comes out of
 * @param backing a liquid or air
 */
public record Setup(Gauge gauge, Coupling coupling, Resin couplant, Resin backing) {

  /** How the sound gets into the film. */
  public enum Coupling {
    /** A probe or its delay line presses on the film, with a film of couplant between. */
    CONTACT,
    /** Through a way of liquid. */
    IMMERSION
  }

  public Setup {
    if (couplant.use() != Resin.Use.LIQUID) {
      throw new IllegalArgumentException(couplant.name() + " is no couplant");
    }
    if (!List.of(Resin.Use.LIQUID, Resin.Use.BACKING).contains(backing.use())) {
      throw new IllegalArgumentException(backing.name() + " is nothing to have behind a film");
    }
  }
}
