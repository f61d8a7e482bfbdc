package dev.filmward.alarm;

import dev.filmward.chart.ChartKind;
import dev.filmward.rule.Side;
import dev.filmward.rule.Signal;
import java.util.Locale;
import java.util.Optional;

/** In which way a layer is unlike itself. */
public enum Deviation {
  THICKER("thicker than usual"),
  THINNER("thinner than usual"),
  SPREAD("more spread across the web than usual");

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

  /** What a signal says; a range that is too small is news, but nothing to raise an alarm for. */
  public static Optional<Deviation> of(Signal signal) {
    if (signal.chart() == ChartKind.XBAR) {
      return Optional.of(signal.side() == Side.HIGH ? THICKER : THINNER);
    }
    return signal.side() == Side.HIGH ? Optional.of(SPREAD) : Optional.empty();
  }
}
