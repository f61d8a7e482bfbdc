package dev.filmward.gauge.echo;

import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A reported layer with what is known of the sound in it, whatever gauge looks at it. Immutable.
 *
 * <p>Time of flight {@code 2 d / v} there and back (ASTM E797, from memory); the velocity of a
 * group is {@code sum(d) / sum(d / v)}, because times add up.
 *
 * @param members the layers in it, outer first
 * @param nominalUm what it is meant to be; empty where a member has no target and no two limits
 * @param velocityMps empty where a part of it is not known
 */
public record GaugedLayer(
    ReportedLayer layer,
    List<LayerSound> members,
    OptionalDouble nominalUm,
    OptionalDouble velocityMps) {
  private static final double UM_AND_MPS_IN_NS = 1000;

  public GaugedLayer {
    members = List.copyOf(members);
  }

  /** All reported layers of a structure, outer first. */
  public static List<GaugedLayer> of(Structure structure) {
    return structure.reported().stream().map(GaugedLayer::of).toList();
  }

  private static GaugedLayer of(ReportedLayer reported) {
    List<LayerSound> members = reported.members().stream().map(LayerSound::of).toList();
    return new GaugedLayer(
        reported, members, nominal(reported, members), groupVelocityMps(members));
  }

  /** There and back, ns; empty where thickness or velocity is not known. */
  public OptionalDouble flightNs() {
    return nominalUm.isPresent() && velocityMps.isPresent()
        ? OptionalDouble.of(
            2 * nominalUm.getAsDouble() / velocityMps.getAsDouble() * UM_AND_MPS_IN_NS)
        : OptionalDouble.empty();
  }

  /** The greatest thickness that the gauge is set to expect; empty unless all members have one. */
  public OptionalDouble greatestUm() {
    double sum = 0;
    for (LayerSound member : members) {
      if (member.layer().greatestUm().isEmpty()) {
        return OptionalDouble.empty();
      }
      sum += member.layer().greatestUm().getAsDouble();
    }
    return OptionalDouble.of(sum);
  }

  private static OptionalDouble groupVelocityMps(List<LayerSound> members) {
    double thickness = 0;
    double time = 0;
    for (LayerSound member : members) {
      if (member.nominalUm().isEmpty() || member.velocityMps().isEmpty()) {
        return members.size() == 1 ? member.velocityMps() : OptionalDouble.empty();
      }
      thickness += member.nominalUm().getAsDouble();
      time += member.nominalUm().getAsDouble() / member.velocityMps().getAsDouble();
    }
    return members.size() == 1 ? members.get(0).velocityMps() : OptionalDouble.of(thickness / time);
  }

  private static OptionalDouble nominal(ReportedLayer reported, List<LayerSound> members) {
    if (reported.individual().target().isPresent()) {
      return reported.individual().target();
    }
    double sum = 0;
    for (LayerSound member : members) {
      if (member.nominalUm().isEmpty()) {
        return OptionalDouble.empty();
      }
      sum += member.nominalUm().getAsDouble();
    }
    return OptionalDouble.of(sum);
  }
}
