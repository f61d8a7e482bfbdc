package dev.filmward.diagnosis;

import static dev.filmward.diagnosis.Condition.Comparison.AT_LEAST;
import static dev.filmward.diagnosis.Condition.Comparison.AT_MOST;
import static dev.filmward.diagnosis.Statistic.PERIODIC_FALSE_ALARM;
import static dev.filmward.diagnosis.Statistic.PERIODIC_LAYERS;
import static dev.filmward.diagnosis.Statistic.PERIOD_MINUTES;
import static dev.filmward.diagnosis.Statistic.SCATTER_LAYERS;
import static dev.filmward.diagnosis.Statistic.SCATTER_SKEW;
import static dev.filmward.diagnosis.Statistic.SCATTER_TRADE;
import static dev.filmward.diagnosis.Statistic.SCATTER_Z;
import static dev.filmward.diagnosis.Statistic.SHORT_LAYERS;
import static dev.filmward.diagnosis.Statistic.SHORT_PERCENT;
import static dev.filmward.diagnosis.Statistic.SHORT_RECOVERED;
import static dev.filmward.diagnosis.Statistic.SHORT_SAMPLES;
import static dev.filmward.diagnosis.Statistic.SHORT_Z;

import dev.filmward.diagnosis.Signature.Kind;
import java.util.List;

/** Signatures of what comes and goes, and of scatter. */
final class DisturbanceSignatures {
  /** From this on readings are skewed by more than chance. */
  private static final double SKEWED = 0.7;

  static List<Signature> all() {
    return List.of(
        shortDropout(), oneOddSample(), oneLayerSwings(), allLayersSwing(), layerScatters());
  }

  private DisturbanceSignatures() {}

  private static Signature shortDropout() {
    return SignatureDraft.of(
            "short-dropout", "A layer is thin for a few samples and comes back", Kind.PROCESS)
        .needs(SHORT_Z, AT_LEAST, ShortLook.CLEAR, 6)
        .needs(SHORT_PERCENT, AT_MOST, 0, 1)
        .needs(SHORT_LAYERS, AT_MOST, 0.7, 2)
        .supports(SHORT_PERCENT, AT_MOST, -5, 1)
        .supports(SHORT_RECOVERED, AT_LEAST, 3, 1)
        .suspects("feeder-hopper", "bridging in the feed throat, empty hopper, blocked loader")
        .suspects("resin-lot", "lump or wet resin")
        .checks(
            "Look into the hopper and at the throat's cooling",
            "Look at the vacuum loader's alarms at that time",
            "Look at the magnet and the grate")
        .apart("A dip of kg/h or motor load at that time tells it from a single bad sample.");
  }

  private static Signature oneOddSample() {
    return SignatureDraft.of(
            "one-odd-sample", "All layers off in a single sample", Kind.MEASUREMENT)
        .needs(SHORT_Z, AT_LEAST, ShortLook.CLEAR, 6)
        .needs(SHORT_LAYERS, AT_LEAST, 0.9, 2)
        .needs(SHORT_SAMPLES, AT_MOST, 1, 1)
        .suspects("gauge-misread", "a stretched, creased or warm sample")
        .suspects("haul-off-speed", "a jerk of the haul-off")
        .checks(
            "Cut a new sample beside it and read it",
            "Let it lie an hour at 23 \u00b0C before reading",
            "Look at the speed log at that time")
        .apart("A second sample from the same place that reads as usual: it was the sample.");
  }

  private static Signature oneLayerSwings() {
    return SignatureDraft.of("one-layer-swings", "One layer swings at an even pace", Kind.PROCESS)
        .needs(PERIODIC_FALSE_ALARM, AT_MOST, PeriodLook.CLEAR, 3)
        .needs(PERIODIC_LAYERS, AT_MOST, 0.7, 2)
        .supports(PERIOD_MINUTES, AT_MOST, 60, 1)
        .suspects("feeder-hopper", "the feeder's refill disturbs it")
        .suspects("melt-temperature", "a zone that switches on and off")
        .checks(
            "Compare the period with the feeder's refill timer",
            "Compare it with the heaters' duty cycle",
            "Look whether melt pressure swings with it: surging")
        .apart("The timer or heater with that very period is the cause.");
  }

  private static Signature allLayersSwing() {
    return SignatureDraft.of("all-layers-swing", "All layers swing at an even pace", Kind.PROCESS)
        .needs(PERIODIC_FALSE_ALARM, AT_MOST, PeriodLook.CLEAR, 3)
        .needs(PERIODIC_LAYERS, AT_LEAST, 0.75, 2)
        .suspects("haul-off-speed", "the haul-off's control hunts")
        .suspects("die-air-ring", "air ring or bubble cage hunts")
        .checks(
            "Compare the period with the speed log",
            "Watch the frost line and the layflat width over two periods")
        .apart("Width that swings with it is the bubble, else the haul-off.");
  }

  private static Signature layerScatters() {
    return SignatureDraft.of(
            "layer-scatters", "A layer scatters more, its mean stays", Kind.PROCESS)
        .needs(SCATTER_Z, AT_LEAST, ScatterLook.CLEAR, 3)
        .supports(SCATTER_TRADE, AT_LEAST, -0.5, 2)
        .supports(SCATTER_LAYERS, AT_MOST, 0.7, 1)
        .supports(SCATTER_SKEW, AT_MOST, SKEWED, 1)
        .suspects("melt-temperature", "melt fracture or waves between layers")
        .suspects("die-air-ring", "an unstable bubble")
        .checks(
            "Look at the film against the light: haze, waves, zig-zag",
            "Compare output and melt temperature with the recipe",
            "Look at the bubble for a draught")
        .apart("Readings of one spot that repeat well say that it is the film.");
  }
}
