package dev.filmward.gauge.screen;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A structure as a pulse-echo gauge hears it: thickness = velocity x time of flight / 2. In um, m/s
 * and ns: t = c tau / 2000. Layers that are reported together have the velocity sum(d) / sum(d /
 * v). Immutable.
 */
final class HeardFilm {
  private static final double UM_PER_MPS_NS = 2000;

  private final String code;
  private final double[] velocityMps;
  private final double[] targetUm;
  private final double[] greatestUm;

  HeardFilm(Structure structure) {
    List<ReportedLayer> layers = structure.reported();
    code = structure.code();
    velocityMps = layers.stream().mapToDouble(HeardFilm::velocity).toArray();
    targetUm =
        layers.stream()
            .mapToDouble(layer -> layer.individual().target().orElse(Double.NaN))
            .map(um -> um > 0 ? um : Double.NaN)
            .toArray();
    greatestUm = layers.stream().mapToDouble(HeardFilm::greatest).toArray();
  }

  private static double velocity(ReportedLayer layer) {
    double thickness = 0;
    double time = 0;
    for (Layer member : layer.members()) {
      double um = member.individual().target().orElse(1);
      double part = um > 0 ? um : 1;
      thickness += part;
      time += part / member.velocityMps().orElseGet(() -> StartVelocity.mps(member));
    }
    return thickness / time;
  }

  private static double greatest(ReportedLayer layer) {
    double sum = 0;
    for (Layer member : layer.members()) {
      OptionalDouble um = member.greatestUm();
      sum += um.orElse(Double.POSITIVE_INFINITY);
    }
    return sum;
  }

  String code() {
    return code;
  }

  int layers() {
    return velocityMps.length;
  }

  double ns(int position, double um) {
    return UM_PER_MPS_NS * um / velocityMps[position - 1];
  }

  double um(int position, double ns) {
    return ns * velocityMps[position - 1] / UM_PER_MPS_NS;
  }

  /** NaN where there is no target. */
  double targetUm(int position) {
    return targetUm[position - 1];
  }

  /** NaN where there is no target. */
  double targetNs(int position) {
    return ns(position, targetUm[position - 1]);
  }

  /** Infinite where it is not known. */
  double greatestUm(int position) {
    return greatestUm[position - 1];
  }
}
