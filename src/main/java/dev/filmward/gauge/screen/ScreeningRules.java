package dev.filmward.gauge.screen;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is done about each kind of misreading, and the gauge's frequency where it is known. By
 * default all kinds are held out where they are certain, and only marked where they are not.
 * Immutable.
 *
 * @param treatments kinds that are not here are held out
 */
public record ScreeningRules(Map<Misread, Treatment> treatments, OptionalDouble gaugeMhz) {
  public static final ScreeningRules USUAL = new ScreeningRules(Map.of(), OptionalDouble.empty());

  private static final double GREATEST_MHZ = 1000;

  public ScreeningRules {
    treatments = Map.copyOf(treatments);
    if (gaugeMhz.isPresent()
        && !(gaugeMhz.getAsDouble() > 0 && gaugeMhz.getAsDouble() <= GREATEST_MHZ)) {
      throw new IllegalArgumentException(
          "the gauge's frequency is in MHz, above 0 up to 1000, not " + gaugeMhz.getAsDouble());
    }
  }

  public Treatment of(Misread kind) {
    return treatments.getOrDefault(kind, Treatment.HOLD_OUT);
  }

  /** All kinds, in their order. */
  public Map<Misread, Treatment> all() {
    Map<Misread, Treatment> all = new EnumMap<>(Misread.class);
    for (Misread kind : Misread.values()) {
      all.put(kind, of(kind));
    }
    return all;
  }

  /** Without the flags of kinds that are not looked for. */
  public List<Flag> keep(List<Flag> flags) {
    return flags.stream().filter(flag -> of(flag.kind()) != Treatment.OFF).toList();
  }

  /** How a sample stands by rule; empty where it has no flags. */
  public Optional<ScreeningState> state(List<Flag> flags) {
    if (flags.isEmpty()) {
      return Optional.empty();
    }
    boolean isHeld =
        flags.stream()
            .anyMatch(flag -> flag.isReasonToHoldOut() && of(flag.kind()) == Treatment.HOLD_OUT);
    return Optional.of(isHeld ? ScreeningState.HELD_OUT : ScreeningState.MARKED);
  }
}
