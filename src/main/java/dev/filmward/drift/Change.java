package dev.filmward.drift;

import java.time.Instant;
import java.util.Optional;

/**
 * The most likely change of a level within a series, when it happened and how large it is, each
 * with a 95 % confidence interval. Announced only where noise alone would do so in less than one
 * series of a hundred, both kinds together, also when neighbouring samples are alike. Immutable.
 *
 * <p>Of several changes the one that explains most is named; look again after it. Sources at {@link
 * Profile}, {@link TubeBound}, {@link StepFit} and {@link RampFit}.
 *
 * @param at for a step the time of the first sample after it; for a ramp the time at which it began
 * @param notBefore empty where a ramp may have begun before the series
 * @param size of a step in the unit of the means; of a ramp that unit per hour
 * @param lag1 autocorrelation of the noise around the change
 * @param p probability of a change that looks so clear if there is none
 */
public record Change(
    Kind kind,
    Instant at,
    Optional<Instant> notBefore,
    Instant notAfter,
    Estimate size,
    double lag1,
    double p) {
  /** With fewer samples no change is looked for. */
  public static final int FEWEST_SAMPLES = 40;

  /** For each of two kinds; both bounds err on the safe side. */
  private static final double GREATEST_P = 0.005;

  /** Whether the level jumped or began to move. */
  public enum Kind {
    STEP,
    RAMP
  }

  /** Empty where nothing stands out of the noise, or for fewer than {@value #FEWEST_SAMPLES}. */
  public static Optional<Change> in(MeanSeries series) {
    if (series.size() < FEWEST_SAMPLES) {
      return Optional.empty();
    }
    Window window = new Window(series);
    if (window.isFlat() || !(window.times[Shape.RAMP.last(window.size())] < 1)) {
      return Optional.empty();
    }
    return in(window);
  }

  private static Optional<Change> in(Window window) {
    Profile step = new Profile(window, Shape.STEP);
    Profile ramp = new Profile(window, Shape.RAMP);
    boolean stepFitsBetter = step.fit(step.best()).squares() <= ramp.fit(ramp.best()).squares();
    Profile better = stepFitsBetter ? step : ramp;
    double p = Math.min(step.p(), ramp.p());
    if (!(p < GREATEST_P)) {
      return Optional.empty();
    }
    return Optional.of(stepFitsBetter ? StepFit.change(better, p) : RampFit.change(better, p));
  }
}
