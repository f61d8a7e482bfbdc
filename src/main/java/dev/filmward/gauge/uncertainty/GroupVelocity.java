package dev.filmward.gauge.uncertainty;

import java.util.List;

/**
 * The velocity of layers that are reported as one, its uncertainty and its change with temperature.
 * Immutable.
 *
 * <p>{@code v = sum(d) / sum(d / v_i)}, so {@code dv / dv_i = v^2 / sum(d) d_i / v_i^2}. Errors of
 * the members are added as they stand, not as squares: members of a group are mostly kin (a skin
 * and its tie), and may err together. That is the cautious end (JCGM 100, F.1.2.3).
 */
public record GroupVelocity(double velocityMps, Uncertain uncertainty, double kelvinMps) {

  /** One layer of a group. */
  public record Member(
      double thicknessUm, double velocityMps, double standardMps, double kelvinMps) {
    public Member {
      if (!(thicknessUm > 0) || !(velocityMps > 0) || !(standardMps >= 0)) {
        throw new IllegalArgumentException(
            "thickness and velocity are above zero and an uncertainty is not below");
      }
    }
  }

  public static GroupVelocity of(List<Member> members) {
    double thickness = members.stream().mapToDouble(Member::thicknessUm).sum();
    double time = members.stream().mapToDouble(m -> m.thicknessUm() / m.velocityMps()).sum();
    double velocity = thickness / time;
    double standard = 0;
    double kelvin = 0;
    for (Member member : members) {
      double slowness = velocity / member.velocityMps();
      double weight = slowness * slowness * member.thicknessUm() / thickness;
      standard += weight * member.standardMps();
      kelvin += weight * member.kelvinMps();
    }
    return new GroupVelocity(velocity, Uncertain.of(standard), kelvin);
  }
}
