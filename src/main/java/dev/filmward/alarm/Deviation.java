package dev.filmward.alarm;

import dev.filmward.rule.Side;
import dev.filmward.rule.Signal;
import java.util.Locale;
import java.util.Optional;

/** In which way a layer is unlike itself. */
public enum Deviation {
  THICKER("thicker than usual"),
  THINNER("thinner than usual"),
  SPREAD("more spread across the web than usual"),
  /** Its means scatter around the centre line too little, too much, or in turn. */
  PATTERN("in an unusual pattern from sample to sample");

  private final String words;

  Deviation(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * What a signal says. A spread that is too small, and the layers' distance together, are news but
   * nothing that a single layer raises an alarm for.
   */
  public static Optional<Deviation> of(Signal signal) {
    return switch (signal.chart()) {
      case XBAR, EWMA, CUSUM -> Optional.of(ofLevel(signal));
      case RANGE, DEVIATION -> signal.side() == Side.HIGH ? Optional.of(SPREAD) : Optional.empty();
      case MOVING_RANGE -> signal.side() == Side.HIGH ? Optional.of(PATTERN) : Optional.empty();
      case T_SQUARED -> Optional.empty();
    };
  }

  private static Deviation ofLevel(Signal signal) {
    return switch (signal.test()) {
      case STRATIFICATION, MIXTURE, ALTERNATION -> PATTERN;
      default -> signal.side() == Side.HIGH ? THICKER : THINNER;
    };
  }
}
