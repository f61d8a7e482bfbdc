package dev.filmward.report.paper.drawing;

import dev.filmward.film.Role;
import java.util.Optional;

/**
 * A layer as its section shows it. Immutable.
 *
 * @param um from which its height is drawn, above zero
 * @param name in bold
 * @param words beside the name
 * @param role empty where it is not known, or where several are reported as one
 */
public record Ply(double um, String name, String words, Optional<Role> role) {
  public Ply {
    if (!(um > 0)) {
      throw new IllegalArgumentException("a layer is thicker than nothing, not " + um + " um");
    }
  }
}
