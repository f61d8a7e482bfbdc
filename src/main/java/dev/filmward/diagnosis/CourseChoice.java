package dev.filmward.diagnosis;

import java.util.OptionalDouble;

/**
 * How one series, seen along the layers that move, runs: as a step, a drift, a drift that levels
 * off, or a drift that ends at a screen change; each at its best place. Immutable.
 */
final class CourseChoice {
  private static final int LEVELLING_PLACES = 8;
  private static final int FEWEST_LEVEL = 4;

  /** A likelihood ratio of 95 % for one parameter, twice its logarithm. */
  private static final double LIKELY = 3.84;

  private static final double PARAMETER = 2;

  private final Whitened white;
  private final double[] minutes;
  private final int last;
  private final Best step;
  private final Best drift;
  private final Best levelling;
  private final Best untilBack;

  /** A course and twice the logarithm of its likelihood above that of none. */
  private record Best(Course course, double gain) {
    Best or(Course other, double otherGain) {
      return otherGain > gain ? new Best(other, otherGain) : this;
    }
  }

  /** Of a series in standard deviations of its news. */
  CourseChoice(Whitened white, double[] minutes, int last, int[] screens) {
    this.white = white;
    this.minutes = minutes;
    this.last = last;
    int n = minutes.length;
    Best bestStep = new Best(Course.step(LevelScan.FEWEST_BEFORE), 0);
    Best bestDrift = new Best(Course.drift(LevelScan.FEWEST_BEFORE), 0);
    Best bestLevelling = bestDrift;
    Best bestBack = bestDrift;
    for (int from = LevelScan.FEWEST_BEFORE; from <= Math.min(last, n - 2); from++) {
      bestStep = bestStep.or(Course.step(from), gain(Course.step(from)));
      if (from <= n - LevelScan.FEWEST_DRIFT) {
        bestDrift = bestDrift.or(Course.drift(from), gain(Course.drift(from)));
        bestLevelling = levelling(bestLevelling, from);
        for (int screen : screens) {
          if (screen >= from + LevelScan.FEWEST_DRIFT && screen < n) {
            Course course = new Course(Course.Kind.UNTIL_BACK, from, screen);
            bestBack = bestBack.or(course, gain(course));
          }
        }
      }
    }
    step = bestStep;
    drift = bestDrift;
    levelling = bestLevelling;
    untilBack = bestBack;
  }

  private Best levelling(Best best, int from) {
    Best found = best;
    int rest = minutes.length - from;
    for (int k = 1; k <= LEVELLING_PLACES / 2; k++) {
      int to = from + rest * k / LEVELLING_PLACES;
      if (to >= from + FEWEST_LEVEL) {
        Course course = new Course(Course.Kind.LEVELLING, from, to);
        found = found.or(course, gain(course));
      }
    }
    return found;
  }

  private double gain(Course course) {
    Whitened.Fit fit = white.fit(course);
    double along = fit.coefficients()[0];
    return along * along * fit.information();
  }

  private double drifting() {
    return Math.max(
        drift.gain(), Math.max(levelling.gain() - PARAMETER, untilBack.gain() - PARAMETER));
  }

  Course best() {
    if (step.gain() >= drifting()) {
      return step.course();
    }
    if (untilBack.gain() - PARAMETER >= drifting()) {
      return untilBack.course();
    }
    return levelling.gain() - PARAMETER >= drifting() ? levelling.course() : drift.course();
  }

  double stepRatherThanDrift() {
    return (step.gain() - drifting()) / 2;
  }

  double levelsOff() {
    return (levelling.gain() - drift.gain()) / 2;
  }

  /** How much better a drift is that ends at a screen change; empty where none could. */
  OptionalDouble backZ() {
    if (untilBack.course().kind() != Course.Kind.UNTIL_BACK) {
      return OptionalDouble.empty();
    }
    double more = untilBack.gain() - Math.max(step.gain(), drift.gain());
    return OptionalDouble.of(Math.signum(more) * Math.sqrt(Math.abs(more)));
  }

  /** Whether a step at a sample is about as likely as the best course. */
  boolean mayStepAt(int from) {
    return from >= LevelScan.FEWEST_BEFORE
        && from <= Math.min(last, minutes.length - 2)
        && gain(best()) - gain(Course.step(from)) <= LIKELY + PARAMETER;
  }

  /** Whether the best course could as well begin at another sample. */
  boolean mayBeginAt(int from) {
    Course best = best();
    if (from < LevelScan.FEWEST_BEFORE || from > Math.min(last, minutes.length - 2)) {
      return false;
    }
    if (!best.isStep() && from > lastDrift(best)) {
      return false;
    }
    Course moved = new Course(best.kind(), from, best.isStep() ? from : best.to());
    return gain(best) - gain(moved) <= LIKELY;
  }

  private int lastDrift(Course best) {
    int end = best.kind() == Course.Kind.DRIFT ? minutes.length : best.to();
    return end - LevelScan.FEWEST_LEVEL_GAP;
  }
}
