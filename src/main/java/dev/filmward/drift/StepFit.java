package dev.filmward.drift;

import java.util.Optional;

/**
 * Where a step happened: all places that the best one does not outdo by more than chance would, at
 * the size of step and the coefficient of noise that each place implies ({@link StepPlaceLimits}).
 *
 * <p>Source: D. Siegmund, Confidence sets in change-point problems, International Statistical
 * Review 56 (1988) 31.
 */
final class StepFit {
  private static final int PARAMETERS = 2;

  private StepFit() {}

  static Change change(Profile profile, double p) {
    Window window = profile.window();
    LineFit fit = profile.fit(profile.best());
    int first = profile.best();
    int last = profile.best();
    for (int place = 0; place < profile.places(); place++) {
      if (isLikely(profile, place)) {
        first = Math.min(first, place);
        last = Math.max(last, place);
      }
    }
    return new Change(
        Change.Kind.STEP,
        window.at(window.times[profile.sample(profile.best())]),
        Optional.of(window.at(window.times[profile.sample(first) - 1])),
        window.at(window.times[profile.sample(last)]),
        size(window, fit),
        fit.phi(),
        p);
  }

  private static boolean isLikely(Profile profile, int place) {
    LineFit fit = profile.fit(place);
    double phi = fit.phi();
    double variance = fit.squares() / (profile.window().size() - 3) / (1 - phi * phi);
    double steps = Math.abs(fit.rate()) / Math.sqrt(variance);
    double deficit = profile.deficit(place);
    return deficit < 2 * StepPlaceLimits.GREATEST && deficit <= 2 * StepPlaceLimits.of(steps, phi);
  }

  private static Estimate size(Window window, LineFit fit) {
    int n = window.size();
    double variance = fit.squares() / (n - 3) * fit.factors().rate();
    double reach = LongRun.quantile(n, PARAMETERS, fit.phi()) * Math.sqrt(variance);
    return Estimate.symmetric(fit.rate(), reach);
  }
}
