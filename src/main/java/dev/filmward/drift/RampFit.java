package dev.filmward.drift;

import java.time.Instant;
import java.util.Optional;

/**
 * When a ramp began, how steep it is and when its mean reaches a limit: all that the likelihood,
 * taken at its best over the rest, does not lack more of than a t quantile of 95 % allows. For the
 * time at which a limit is reached this is Fieller's interval, joined over the places of the bend.
 *
 * <p>Source: G. A. F. Seber and C. J. Wild, Nonlinear Regression (1989), sections 5.9 (profile) and
 * 9.3 (bent lines); E. C. Fieller, Some problems in interval estimation, Journal of the Royal
 * Statistical Society B 16 (1954) 175. Degrees of freedom as in {@link LongRun}.
 */
final class RampFit {
  private static final int PARAMETERS = 4;

  private final Profile profile;
  private final Window window;
  private final double phi;
  private final double allowedSquares;

  RampFit(Profile profile) {
    this.profile = profile;
    this.window = profile.window();
    LineFit best = profile.fit(profile.best());
    this.phi = best.phi();
    double t = LongRun.quantile(window.size(), PARAMETERS, phi);
    double least = Double.POSITIVE_INFINITY;
    for (int place = 0; place < profile.places(); place++) {
      least = Math.min(least, profile.fitAt(place, phi).squares());
    }
    this.allowedSquares = least * (1 + t * t / (window.size() - PARAMETERS));
  }

  static Change change(Profile profile, double p) {
    return new RampFit(profile).change(p);
  }

  LineFit best() {
    return profile.fit(profile.best());
  }

  /** As a part of the span. */
  double bend() {
    return window.times[profile.sample(profile.best())];
  }

  private Change change(double p) {
    int first = profile.best();
    int last = profile.best();
    for (int place = 0; place < profile.places(); place++) {
      if (spare(place) >= 0) {
        first = Math.min(first, place);
        last = Math.max(last, place);
      }
    }
    Optional<Instant> notBefore =
        first == 0 ? Optional.empty() : Optional.of(window.at(window.times[first - 1]));
    return new Change(
        Change.Kind.RAMP,
        window.at(bend()),
        notBefore,
        window.at(window.times[last + 1]),
        perHour(),
        phi,
        p);
  }

  /** Squares that a place may still lose before it is unlikely. */
  private double spare(int place) {
    return allowedSquares - profile.fitAt(place, phi).squares();
  }

  private Estimate perHour() {
    double rate = best().rate();
    double lower = rate;
    double upper = rate;
    for (int place = 0; place < profile.places(); place++) {
      double spare = spare(place);
      if (spare >= 0) {
        LineFit fit = profile.fitAt(place, phi);
        double reach = Math.sqrt(spare * fit.factors().rate());
        lower = Math.min(lower, fit.rate() - reach);
        upper = Math.max(upper, fit.rate() + reach);
      }
    }
    double span = window.spanHours();
    return new Estimate(rate / span, lower / span, upper / span);
  }

  /**
   * When the line meets a value that it moves towards, as parts of the span; the end is infinite
   * where the line may turn out to be flat.
   */
  Crossing crossing(double value) {
    double aim = value - window.average();
    LineFit fit = best();
    double expected = bend() + (aim - fit.level()) / fit.rate();
    Crossing crossing = new Crossing(expected, expected, expected);
    for (int place = 0; place < profile.places(); place++) {
      double spare = spare(place);
      if (spare > 0) {
        crossing =
            crossing.joined(
                Fieller.of(profile.fitAt(place, phi), aim, spare),
                window.times[profile.sample(place)]);
      }
    }
    return crossing;
  }

  /** Times as parts of the span. */
  record Crossing(double expected, double earliest, double latest) {

    Crossing joined(Fieller fieller, double bend) {
      return new Crossing(
          expected,
          Math.min(earliest, bend + fieller.lower()),
          Math.max(latest, bend + fieller.upper()));
    }
  }
}
