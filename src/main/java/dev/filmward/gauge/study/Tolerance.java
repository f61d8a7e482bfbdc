package dev.filmward.gauge.study;

import dev.filmward.film.SpecLimits;
import java.util.Optional;

/**
 * The width that six standard deviations of the gauge are compared with. With one limit there is no
 * such width; twice the way from the mean of the readings to that limit stands in for it, where the
 * mean lies on the right side (common practice, no source). Immutable.
 *
 * @param widthUm above 0
 */
public record Tolerance(Kind kind, double widthUm) {

  /** Where the width comes from. */
  public enum Kind {
    BOTH_LIMITS("between both specification limits"),
    LOWER_LIMIT("twice from the lower specification limit to the mean of the readings"),
    UPPER_LIMIT("twice from the mean of the readings to the upper specification limit");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  public Tolerance {
    if (!(widthUm > 0) || !Double.isFinite(widthUm)) {
      throw new IllegalArgumentException("a tolerance is above 0, not " + widthUm);
    }
  }

  /** Empty where no limit is known, or the mean lies beyond the only one. */
  public static Optional<Tolerance> of(SpecLimits limits, double meanUm) {
    if (limits.lower().isPresent() && limits.upper().isPresent()) {
      double width = limits.upper().getAsDouble() - limits.lower().getAsDouble();
      return Optional.of(new Tolerance(Kind.BOTH_LIMITS, width));
    }
    if (limits.lower().isPresent()) {
      return oneSided(Kind.LOWER_LIMIT, meanUm - limits.lower().getAsDouble());
    }
    return limits.upper().isPresent()
        ? oneSided(Kind.UPPER_LIMIT, limits.upper().getAsDouble() - meanUm)
        : Optional.empty();
  }

  private static Optional<Tolerance> oneSided(Kind kind, double distanceUm) {
    return distanceUm > 0 ? Optional.of(new Tolerance(kind, 2 * distanceUm)) : Optional.empty();
  }

  /** Six standard deviations of a variance in um², in percent of the width. */
  public double percent(double variance) {
    return 100 * 6 * Math.sqrt(variance) / widthUm;
  }
}
