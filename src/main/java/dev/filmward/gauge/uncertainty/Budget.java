package dev.filmward.gauge.uncertainty;

import java.util.List;

/**
 * What a result's uncertainty is made of, for quantities that do not depend on each other.
 * Immutable.
 *
 * <p>Combined {@code u^2 = sum (c_i u_i)^2} (JCGM 100, 5.1.2); effective degrees of freedom {@code
 * u^4 / sum (c_i u_i)^4 / v_i} after Welch and Satterthwaite (JCGM 100, G.4.1); expanded {@code U =
 * k u} (6.2.1).
 */
public record Budget(List<Component> components, Coverage coverage) {

  private static final double MOST = 1e9;

  public Budget {
    components = List.copyOf(components);
    if (components.isEmpty()) {
      throw new IllegalArgumentException("a budget has one component or more");
    }
    if (!(components.stream().mapToDouble(Component::contribution).max().orElse(0) < MOST)) {
      throw new IllegalArgumentException("an uncertainty is so large that nothing can be said");
    }
  }

  public double combined() {
    return Math.sqrt(variance());
  }

  private double variance() {
    return components.stream().mapToDouble(c -> c.contribution() * c.contribution()).sum();
  }

  /** Infinite where every component is taken as known. */
  public double effectiveDegrees() {
    double rest =
        components.stream()
            .mapToDouble(c -> Math.pow(c.contribution(), 4) / c.input().degrees())
            .sum();
    return rest > 0 ? variance() * variance() / rest : Double.POSITIVE_INFINITY;
  }

  public double factor() {
    return coverage.factor(effectiveDegrees());
  }

  public double expanded() {
    return factor() * combined();
  }

  /** How much of the variance is a component's; 0 where there is none at all. */
  public double share(Component component) {
    double all = variance();
    return all > 0 ? component.contribution() * component.contribution() / all : 0;
  }
}
