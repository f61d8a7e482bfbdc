package dev.filmward.drift;

/**
 * Probability that a random walk with normal steps never comes above a barrier, by its distance
 * below the barrier. At a distance u with the standard normal x of the next step it survives if x
 * lies within the {@link Cut} at u; the next distance is {@code u + step x + drift}.
 *
 * <p>The integral equation {@code R(u) = E R(u + step x + drift)} is solved on a lattice, R being
 * linear in between and 1 far below the barrier; {@code 1 - R} is right to about 2 %. Immutable.
 */
final class Survival {
  private static final double LEAST = -8;
  private static final double GREATEST = 12;

  /** Steps that survive, by distance. */
  interface Cut {
    double lower(double distance);

    double upper(double distance);
  }

  private final double spacing;
  private final double[] survival;

  private Survival(double spacing, double[] survival) {
    this.spacing = spacing;
    this.survival = survival;
  }

  static Survival of(LatticeSteps steps, Cut cut) {
    double spacing = steps.spacing();
    int size = (int) Math.ceil((GREATEST - LEAST) / spacing);
    BandEquations equations = new BandEquations(size, -steps.first(), steps.last());
    for (int i = 0; i < size; i++) {
      double distance = LEAST + i * spacing;
      equations.add(i, i, 1);
      double lower = cut.lower(distance);
      double upper = cut.upper(distance);
      steps.forEach(lower, upper, new Row(equations, i, size));
    }
    return new Survival(spacing, equations.solve());
  }

  /** Puts the weights of a point's next places into the equations; far below the barrier R is 1. */
  private record Row(BandEquations equations, int from, int size) implements LatticeSteps.Sink {
    @Override
    public void accept(int offset, double weight) {
      int to = from + offset;
      if (to >= size) {
        equations.addRight(from, weight);
      } else if (to >= 0) {
        equations.add(from, to, -weight);
      }
    }
  }

  double at(double distance) {
    double position = (distance - LEAST) / spacing;
    if (position < 0) {
      return 0;
    }
    int i = (int) position;
    if (i >= survival.length - 1) {
      return 1;
    }
    return survival[i] + (position - i) * (survival[i + 1] - survival[i]);
  }
}
