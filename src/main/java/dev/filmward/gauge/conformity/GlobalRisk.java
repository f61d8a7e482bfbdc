package dev.filmward.gauge.conformity;

import dev.filmward.stats.Normal;
import dev.filmward.stats.PanelIntegral;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * How often a normal process and its gauge lead to a wrong statement, before anything is measured.
 * Immutable.
 *
 * <p>Source: JCGM 106:2012, 9.5: the joint distribution of true value and measured value,
 * integrated over true values outside and accepted (consumer), inside and not accepted (producer).
 * Here by panels of Gauss and Legendre no wider than half a standard deviation where the integrand
 * changes.
 *
 * @param consumer share of all that is outside the specification and accepted
 * @param producer share of all that is inside and not accepted
 */
public record GlobalRisk(double consumer, double producer) {
  private static final double PROCESS_REACH = 12;
  private static final double GAUGE_REACH = 9;
  private static final double PANEL = 0.5;

  /**
   * What is made and how it is measured.
   *
   * @param sigma standard deviation of the true values, above zero
   * @param standard uncertainty of the measurement, above zero
   */
  public record MeasuredProcess(double mean, double sigma, double standard) {
    public MeasuredProcess {
      if (!Double.isFinite(mean) || !(sigma > 0) || !(standard > 0)) {
        throw new IllegalArgumentException(
            "a process has a mean, and standard deviations above zero, not "
                + List.of(mean, sigma, standard));
      }
    }

    private double density(double value) {
      return Normal.density((value - mean) / sigma) / sigma;
    }
  }

  public static GlobalRisk of(MeasuredProcess process, GuardedLimits limits) {
    double least = process.mean() - PROCESS_REACH * process.sigma();
    double most = process.mean() + PROCESS_REACH * process.sigma();
    double[] edges = edges(process, limits, least, most);
    Acceptance acceptance = new Acceptance(process.standard(), limits);
    double outside = 0;
    double inside = 0;
    for (int i = 1; i < edges.length; i++) {
      double middle = (edges[i - 1] + edges[i]) / 2;
      if (limits.spec().excludes(middle)) {
        outside +=
            PanelIntegral.of(
                x -> process.density(x) * acceptance.accepted(x), edges[i - 1], edges[i]);
      } else {
        inside +=
            PanelIntegral.of(
                x -> process.density(x) * acceptance.refused(x), edges[i - 1], edges[i]);
      }
    }
    return new GlobalRisk(outside, inside);
  }

  private static double[] edges(
      MeasuredProcess process, GuardedLimits limits, double least, double most) {
    DoubleStream wide = steps(process.mean(), process.sigma(), PROCESS_REACH);
    DoubleStream near =
        DoubleStream.of(limits.from(), limits.upTo())
            .filter(Double::isFinite)
            .flatMap(edge -> steps(edge, process.standard(), GAUGE_REACH));
    DoubleStream spec = DoubleStream.of(limits.lower(), limits.upper());
    return DoubleStream.concat(DoubleStream.concat(wide, near), spec)
        .filter(edge -> edge >= least && edge <= most)
        .sorted()
        .distinct()
        .toArray();
  }

  private static DoubleStream steps(double centre, double sigma, double reach) {
    int steps = (int) (reach / PANEL);
    return java.util.stream.IntStream.rangeClosed(-steps, steps)
        .mapToDouble(i -> centre + i * PANEL * sigma);
  }

  /** How likely a true value is measured within what is accepted, and outside. */
  private record Acceptance(double standard, GuardedLimits limits) {
    double accepted(double value) {
      if (!limits.leavesRoom()) {
        return 0;
      }
      double from = (limits.from() - value) / standard;
      double upTo = (limits.upTo() - value) / standard;
      return from > 0
          ? Normal.STANDARD.above(from) - Normal.STANDARD.above(upTo)
          : Normal.STANDARD.below(upTo) - Normal.STANDARD.below(from);
    }

    double refused(double value) {
      if (!limits.leavesRoom()) {
        return 1;
      }
      return Normal.STANDARD.below((limits.from() - value) / standard)
          + Normal.STANDARD.above((limits.upTo() - value) / standard);
    }
  }
}
