package dev.filmward.diagnosis;

import static dev.filmward.diagnosis.Condition.Comparison.AT_LEAST;
import static dev.filmward.diagnosis.Condition.Comparison.AT_MOST;
import static dev.filmward.diagnosis.Statistic.*;

import dev.filmward.diagnosis.Condition.Comparison;
import dev.filmward.diagnosis.Condition.Role;
import dev.filmward.diagnosis.Signature.Kind;
import java.util.ArrayList;
import java.util.List;

/**
 * The signatures that Filmward comes with. Causes and checks are common practice, no source, except
 * where the name says so; thresholds were chosen on simulated film and are proven by {@code
 * DiagnosisProofTest}.
 */
final class BuiltInSignatures {
  /** From this on a pattern over the layers is taken for one. */
  private static final double EXPLAINED = 0.75;

  private static final double WELL_EXPLAINED = 0.95;

  /** A step that a drift does not explain much better. */
  private static final double NO_DRIFT = -1;

  /** The same where a boundary already speaks for a step. */
  private static final double HARDLY_DRIFT = -4;

  /** From this on readings are skewed by more than chance. */
  private static final double SKEWED = 0.7;

  private static final double AT_BOUNDARY = 2;
  private static final double FLAGGED_OFTEN = 0.05;

  static final List<Signature> ALL = all();

  private BuiltInSignatures() {}

  private static List<Signature> all() {
    List<Signature> all = new ArrayList<>();
    all.addAll(levels());
    all.addAll(drifts());
    all.addAll(trades());
    all.addAll(disturbances());
    all.addAll(profiles());
    all.addAll(gauge());
    all.addAll(screening());
    return List.copyOf(all);
  }

  private static List<Signature> levels() {
    return List.of(
        of("all-layers-together", "All layers move together", Kind.PROCESS)
            .pattern(COMMON_EXPLAINED)
            .supports(LAYERS_MOVED, AT_LEAST, 0.6, 1)
            .supports(TO_CALIBRATION, AT_LEAST, 3, 2)
            .suspects("haul-off-speed", "haul-off or winder runs at another speed")
            .suspects("layflat-width", "layflat width, blow-up ratio or neck-in changed")
            .suspects("other", "the output of all extruders together was changed")
            .checks(
                "Compare the line speed log with the time of the change",
                "Measure the layflat width",
                "Compare the total output in kg/h with its set-point",
                "Read the check standard on the gauge")
            .apart(
                "Thickness alone cannot tell speed, width and total output apart: the speed log,"
                    + " a tape measure and the kg/h can."),
        of("one-layer-step", "One layer moves at once, the total follows", Kind.PROCESS)
            .pattern(ONE_LAYER_EXPLAINED)
            .supports(STEP_RATHER_THAN_DRIFT, AT_LEAST, 0, 2)
            .supports(TOTAL_FOLLOWS_Z, AT_MOST, 3, 1)
            .supports(SCATTER_Z, AT_MOST, ScatterLook.CLEAR, 2)
            .supports(TO_RESIN_LOT, AT_LEAST, 3, 2)
            .supports(TO_CALIBRATION, AT_LEAST, 3, 2)
            .suspects("feeder-hopper", "feeder or hopper of that layer's extruder")
            .suspects("other", "screw speed of that extruder")
            .suspects("melt-temperature", "a temperature zone of that extruder")
            .checks(
                "Compare the feeder's kg/h of this layer's extruder with its set-point",
                "Look at screw speed and melt pressure since the change",
                "Look into the hopper: level, bridging, the right resin",
                "Read the same spot on the gauge again")
            .apart(
                "If the extruder's kg/h moved by the same percentage it is the extruder; if not,"
                    + " the distribution or the reading."),
        of("one-extruder-step", "All layers of one extruder move at once", Kind.PROCESS)
            .pattern(EXTRUDER_EXPLAINED)
            .supports(STEP_RATHER_THAN_DRIFT, AT_LEAST, 0, 2)
            .supports(TOTAL_FOLLOWS_Z, AT_MOST, 3, 1)
            .supports(SCATTER_Z, AT_MOST, ScatterLook.CLEAR, 2)
            .supports(TO_RESIN_LOT, AT_LEAST, 3, 2)
            .supports(TO_CALIBRATION, AT_LEAST, 3, 2)
            .suspects("feeder-hopper", "feeder or hopper of that extruder")
            .suspects("other", "screw speed of that extruder")
            .suspects("melt-temperature", "a temperature zone of that extruder")
            .checks(
                "Compare the feeder's kg/h of that extruder with its set-point",
                "Look at its screw speed and melt pressure since the change",
                "Look into its hopper: level, bridging, the right resin")
            .apart("The extruder's kg/h tells it from a velocity set for its resin."),
        of("step-at-resin-lot", "A step where a resin lot was changed", Kind.PROCESS)
            .needs(TO_RESIN_LOT, AT_MOST, AT_BOUNDARY, 3)
            .needs(STEP_RATHER_THAN_DRIFT, AT_LEAST, HARDLY_DRIFT, 2)
            .needs(COMMON_EXPLAINED, AT_MOST, EXPLAINED, 0)
            .supports(ONE_SOURCE_EXPLAINED, AT_LEAST, 0.9, 3)
            .suspects("resin-lot", "another viscosity or bulk density of the new lot or silo")
            .checks(
                "Compare the certificates of both lots: melt flow rate, density",
                "Check the feeder's calibration factor for the new bulk density",
                "Compare melt pressure and motor load before and after")
            .apart("A step that does not come back with the old lot has another cause."));
  }

  private static List<Signature> drifts() {
    return List.of(
        of("slow-decline", "One extruder delivers less and less", Kind.PROCESS)
            .pattern(ONE_SOURCE_EXPLAINED)
            .needs(STEP_RATHER_THAN_DRIFT, AT_MOST, NO_DRIFT, 2)
            .needs(MOVED_PERCENT, AT_MOST, 0, 1)
            .supports(STEP_BACK_AT_SCREEN_Z, AT_LEAST, 3, 2)
            .supports(TO_RESTART, AT_LEAST, 3, 1)
            .supports(TO_RESIN_LOT, AT_LEAST, 3, 2)
            .supports(TO_CALIBRATION, AT_LEAST, 3, 2)
            .suspects("screen-blinded", "the screen pack fills up")
            .suspects("feeder-hopper", "the feeder loses output")
            .suspects("other", "worn screw or barrel, build-up in the die")
            .checks(
                "Look at the melt pressure before the screen over the last days",
                "Look when the screen was last changed",
                "Compare the feeder's kg/h with its set-point")
            .apart("Pressure before the screen rises where it blinds; else it is the feeder."),
        of("slow-rise", "One extruder delivers more and more", Kind.PROCESS)
            .pattern(ONE_SOURCE_EXPLAINED)
            .needs(STEP_RATHER_THAN_DRIFT, AT_MOST, NO_DRIFT, 2)
            .needs(MOVED_PERCENT, AT_LEAST, 0, 1)
            .supports(TO_RESTART, AT_LEAST, 3, 1)
            .supports(TO_RESIN_LOT, AT_LEAST, 3, 2)
            .supports(TO_CALIBRATION, AT_LEAST, 3, 2)
            .suspects("feeder-hopper", "the feeder drifts or its scale is touched")
            .suspects("melt-temperature", "the melt gets warmer")
            .checks(
                "Compare the feeder's kg/h with its set-point",
                "Weigh what the feeder delivers in a minute",
                "Look at the zone temperatures since the change")
            .apart("Weighing the feeder's output tells feeder from melt."),
        of("core-since-start", "The core drifts since the start and levels off", Kind.PROCESS)
            .pattern(ONE_SOURCE_EXPLAINED)
            .needs(CORE_MOVED, AT_LEAST, 1, 1)
            .needs(STEP_RATHER_THAN_DRIFT, AT_MOST, NO_DRIFT, 2)
            .needs(TO_RESTART, AT_MOST, 6, 2)
            .supports(LEVELS_OFF, AT_LEAST, 2, 2)
            .suspects("start-up", "regrind builds up after the start")
            .suspects("resin-lot", "bulk density of the core blend changes")
            .checks(
                "Compare the regrind share set with that fed",
                "Weigh a litre of the core blend",
                "Compare the core extruder's kg/h with its set-point")
            .apart("With the regrind off for an hour the core goes back, if that is it."));
  }

  private static List<Signature> trades() {
    return List.of(
        of("mass-traded", "Two layers trade off, the mass stays", Kind.PROCESS)
            .pattern(TRADE_EXPLAINED)
            .needs(TRADE_MASS_Z, AT_MOST, 3.3, 2)
            .supports(TRADE_MASS_Z, AT_MOST, 1.5, 1)
            .supports(ONE_SOURCE_EXPLAINED, AT_MOST, EXPLAINED, 2)
            .supports(SKINS_OPPOSED_EXPLAINED, AT_MOST, EXPLAINED, 2)
            .suspects("other", "ratio control moved one extruder up and the other down")
            .suspects("other", "feedblock: split, vane or pin")
            .suspects("melt-temperature", "a zone of feedblock or die")
            .checks(
                "Compare the ratio set-points with those of the recipe",
                "Look at feedblock pins, vanes and zone temperatures",
                "Read the same spot on the gauge again: a process fault reads the same")
            .apart(
                "Read the same spot again, three times: a process fault repeats, a misplaced"
                    + " boundary does not."),
        of("skins-opposed", "Outer skin up, inner skin down, or the other way", Kind.PROCESS)
            .pattern(SKINS_OPPOSED_EXPLAINED)
            .supports(TRADE_MASS_Z, AT_MOST, 3.3, 2)
            .supports(MASS_CHANGE_Z, AT_MOST, 3, 2)
            .suspects("melt-temperature", "inner and outer zone of feedblock or die differ")
            .suspects("other", "feedblock split between the skins, die gap")
            .checks(
                "Compare the inner and outer zone temperatures of the die",
                "Look at the feedblock's split between the skins",
                "Make sure that the sample was not turned over")
            .apart("A turned sample is mirrored in all layers, not only the skins."),
        of("boundary-misplaced", "A boundary is read in the wrong place", Kind.MEASUREMENT)
            .pattern(TRADE_EXPLAINED)
            .needs(TRADE_TIME_OF_FLIGHT_Z, AT_MOST, 3.3, 2)
            .needs(TRADE_APART, AT_MOST, 1, 0)
            .supports(TRADE_TIME_OF_FLIGHT_Z, AT_MOST, 1.5, 1)
            .supports(ONE_SOURCE_EXPLAINED, AT_MOST, EXPLAINED, 2)
            .supports(STEP_RATHER_THAN_DRIFT, AT_LEAST, 0, 1)
            .suspects("gauge-misread", "gate, threshold or polarity: the wrong edge of an echo")
            .checks(
                "Read the same spot again, three times",
                "Look at the waveform: is the echo of that boundary clear?",
                "Cut a section of one lane and look at it")
            .apart(
                "Read the same spot again, three times: a misplaced boundary does not repeat, or"
                    + " moves with the gate; a section settles it."),
        of("boundary-jumps", "A boundary jumps between readings", Kind.MEASUREMENT)
            .needs(SCATTER_TRADE, AT_MOST, -0.6, 3)
            .supports(SCATTER_TRADE, AT_MOST, -0.85, 2)
            .supports(SCATTER_TRADE_TIME_OF_FLIGHT, AT_MOST, 0.25, 2)
            .suspects("gauge-misread", "weak echo: noise moves the boundary")
            .checks(
                "Read the same spot again, three times",
                "Clean the probe, renew the couplant",
                "Look at the waveform of that boundary")
            .apart("Repeat readings of one spot that scatter alike are the gauge, else the film."));
  }

  private static List<Signature> disturbances() {
    return List.of(
        of("short-dropout", "A layer is thin for a few samples and comes back", Kind.PROCESS)
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
            .apart("A dip of kg/h or motor load at that time tells it from a single bad sample."),
        of("one-odd-sample", "All layers off in a single sample", Kind.MEASUREMENT)
            .needs(SHORT_Z, AT_LEAST, ShortLook.CLEAR, 6)
            .needs(SHORT_LAYERS, AT_LEAST, 0.9, 2)
            .needs(SHORT_SAMPLES, AT_MOST, 1, 1)
            .suspects("gauge-misread", "a stretched, creased or warm sample")
            .suspects("haul-off-speed", "a jerk of the haul-off")
            .checks(
                "Cut a new sample beside it and read it",
                "Let it lie an hour at 23 \u00b0C before reading",
                "Look at the speed log at that time")
            .apart("A second sample from the same place that reads as usual: it was the sample."),
        of("one-layer-swings", "One layer swings at an even pace", Kind.PROCESS)
            .needs(PERIODIC_FALSE_ALARM, AT_MOST, PeriodLook.CLEAR, 3)
            .needs(PERIODIC_LAYERS, AT_MOST, 0.7, 2)
            .supports(PERIOD_MINUTES, AT_MOST, 60, 1)
            .suspects("feeder-hopper", "the feeder's refill disturbs it")
            .suspects("melt-temperature", "a zone that switches on and off")
            .checks(
                "Compare the period with the feeder's refill timer",
                "Compare it with the heaters' duty cycle",
                "Look whether melt pressure swings with it: surging")
            .apart("The timer or heater with that very period is the cause."),
        of("all-layers-swing", "All layers swing at an even pace", Kind.PROCESS)
            .needs(PERIODIC_FALSE_ALARM, AT_MOST, PeriodLook.CLEAR, 3)
            .needs(PERIODIC_LAYERS, AT_LEAST, 0.75, 2)
            .suspects("haul-off-speed", "the haul-off's control hunts")
            .suspects("die-air-ring", "air ring or bubble cage hunts")
            .checks(
                "Compare the period with the speed log",
                "Watch the frost line and the layflat width over two periods")
            .apart("Width that swings with it is the bubble, else the haul-off."),
        of("layer-scatters", "A layer scatters more, its mean stays", Kind.PROCESS)
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
            .apart("Readings of one spot that repeat well say that it is the film."));
  }

  private static List<Signature> profiles() {
    return List.of(
        of("profile-of-all-layers", "Lanes differ, in all layers alike", Kind.PROCESS)
            .needs(LANES_COMMON_EXPLAINED, AT_LEAST, 0.7, 3)
            .supports(LANES_COMMON_EXPLAINED, AT_LEAST, 0.9, 2)
            .supports(LANES_TOTAL_Z, AT_LEAST, 4, 2)
            .supports(LANES_ALIKE, AT_LEAST, 0.7, 1)
            .suspects("die-air-ring", "die bolt or lip, air ring, die centring")
            .suspects("melt-temperature", "a zone around the die")
            .checks(
                "Compare the lane with the die bolt map and the air ring",
                "Look at the bubble or the melt curtain for a draught",
                "Look at the die's zone temperatures")
            .apart(
                "A place that stays with the die is die or air ring; one that wanders is draught."),
        of("profile-of-one-layer", "Lanes differ in one layer, the total is flat", Kind.PROCESS)
            .needs(LANES_ONE_LAYER_EXPLAINED, AT_LEAST, 0.7, 3)
            .supports(LANES_ONE_LAYER_EXPLAINED, AT_LEAST, 0.9, 2)
            .supports(LANES_TOTAL_Z, AT_MOST, 3, 2)
            .supports(CURVATURE_EXPLAINED, AT_MOST, 0.7, 2)
            .suspects("melt-temperature", "that layer's melt spreads unevenly")
            .suspects("other", "a plugged port, distribution of that layer, too low a flow share")
            .checks(
                "Compare the melt temperature of that layer's extruder with the recipe",
                "Compare its share of the output with what the die was made for",
                "Look for a plugged port at the next stop")
            .apart("Another melt temperature that moves the profile: it is flow, no plug."),
        of("edge-against-centre", "Two neighbours trade between edge and centre", Kind.PROCESS)
            .needs(CURVATURE_EXPLAINED, AT_LEAST, 0.65, 3)
            .needs(CURVATURE_OPPOSED_Z, AT_LEAST, 3, 2)
            .supports(CURVATURE_EXPLAINED, AT_LEAST, 0.9, 2)
            .supports(LANES_TOTAL_Z, AT_MOST, 4, 1)
            .suspects("melt-temperature", "the thinner melt moves to the walls: encapsulation")
            .suspects("resin-lot", "another viscosity of one of the two resins")
            .checks(
                "Compare melt temperatures and viscosities of the two neighbours",
                "Compare melt flow rates of the lots in use")
            .apart("It follows the melt temperature of either layer within the hour."));
  }

  private static List<Signature> gauge() {
    return List.of(
        of("zero-offset", "The first layer is off since a calibration", Kind.MEASUREMENT)
            .pattern(FIRST_LAYER_EXPLAINED)
            .needs(TO_CALIBRATION, AT_MOST, AT_BOUNDARY, 2)
            .needs(STEP_RATHER_THAN_DRIFT, AT_LEAST, HARDLY_DRIFT, 1)
            .suspects("gauge-calibration", "zero offset of the gauge")
            .checks(
                "Read check standards of two thicknesses: the same micrometres off in both?",
                "Set the zero anew by the gauge's instructions")
            .apart("Two check standards: an offset is the same in um, a velocity the same in %."),
        of(
                "velocity-changed",
                "Layers of one resin are scaled since a calibration",
                Kind.MEASUREMENT)
            .pattern(ONE_RESIN_EXPLAINED)
            .needs(TO_CALIBRATION, AT_MOST, AT_BOUNDARY, 2)
            .needs(STEP_RATHER_THAN_DRIFT, AT_LEAST, HARDLY_DRIFT, 1)
            .suspects("gauge-calibration", "another sound velocity was set")
            .checks(
                "Compare the velocity set with the calibration record",
                "Read check standards of two thicknesses of that resin",
                "Compare the layer's share with the feeder's kg/h")
            .apart("Two check standards: an offset is the same in um, a velocity the same in %."),
        of("temperature-wave", "All layers swing with the day", Kind.MEASUREMENT)
            .needs(DAILY_Z, AT_LEAST, DailyLook.CLEAR, 3)
            .supports(DAILY_LAYERS, AT_LEAST, 0.6, 2)
            .supports(DAILY_MATERIAL_EXPLAINED, AT_LEAST, 0.9, 2)
            .suspects("gauge-calibration", "samples or gauge get warm by day")
            .suspects("die-air-ring", "cooling air gets warm by day")
            .checks(
                "Compare the wave with a thermometer beside the gauge",
                "Let samples lie an hour at 23 \u00b0C before reading",
                "Compare it with the cooling air's temperature")
            .apart("Samples conditioned alike that still swing: it is the process."),
        of("couplant-counted", "The outermost layer is thick now and then", Kind.MEASUREMENT)
            .needs(SCATTER_SKEW, AT_LEAST, SKEWED, 3)
            .needs(SCATTER_POSITION, AT_MOST, 1, 2)
            .needs(SCATTER_Z, AT_LEAST, ScatterLook.CLEAR, 5)
            .suspects("gauge-misread", "couplant or air counted as film")
            .checks(
                "Wipe probe and film, use less couplant, press evenly", "Read the same spot again")
            .apart("Readings with a clean probe that come back to usual."));
  }

  private static List<Signature> screening() {
    return List.of(
        flagged("boundary-missed", "A boundary is not found", FLAGGED_MISSED_BOUNDARY)
            .checks(
                "Look at gain and threshold of that boundary",
                "Make sure that the right side of the sample is up",
                "Read the same spot again")
            .apart("A section of the film shows whether the layer is there."),
        flagged("boundary-flagged", "Neighbours trade within samples", FLAGGED_MISPLACED_BOUNDARY)
            .checks("Read the same spot again, three times", "Look at the waveform")
            .apart("A misplaced boundary does not repeat; the process does."),
        flagged("range-end", "Readings are pinned at the end of the range", FLAGGED_RANGE_END)
            .checks(
                "Compare the range that the gauge is set to with the recipe",
                "Read the check standard")
            .apart("A wider range that shows other values: it was the range."),
        flagged("couplant-flagged", "Couplant is counted as film", FLAGGED_COUPLANT)
            .checks("Wipe probe and film, use less couplant", "Read the same spot again")
            .apart("Readings with a clean probe that come back to usual."),
        of("echo-lost", "Readings are missing", Kind.MEASUREMENT)
            .needs(MISSING_SHARE, AT_LEAST, FLAGGED_OFTEN, 2)
            .needs(MISSING_Z, AT_LEAST, 6, 2)
            .supports(FLAGGED_LOST_ECHO, AT_LEAST, FLAGGED_OFTEN, 1)
            .suspects("gauge-misread", "couplant, dirt, a worn probe")
            .checks("Clean the probe, renew the couplant", "Read the check standard")
            .apart("Echoes that come back with a clean probe."),
        of("stuck-values", "Samples read exactly the same", Kind.MEASUREMENT)
            .needs(SAME_IN_A_ROW, AT_LEAST, 3, 3)
            .suspects("gauge-misread", "gauge on hold, or rows copied")
            .checks("Look whether the gauge is on hold", "Compare the file with the gauge's log")
            .apart("Readings that move again once the gauge reads anew."),
        of("upside-down", "The sample looks turned over", Kind.MEASUREMENT)
            .needs(UPSIDE_DOWN, AT_LEAST, 50, 3)
            .supports(MASS_CHANGE_Z, AT_MOST, 3, 1)
            .suspects("gauge-misread", "the sample was read from its inner side")
            .checks("Mark the outer side and read the sample again")
            .apart("Turned back it reads as usual."));
  }

  private static Draft flagged(String code, String name, Statistic statistic) {
    return of(code, name, Kind.MEASUREMENT)
        .needs(statistic, AT_LEAST, FLAGGED_OFTEN, 3)
        .suspects("gauge-misread", "screening took these readings for misread");
  }

  private static Draft of(String code, String name, Kind kind) {
    return new Draft(code, name, kind);
  }

  /** A signature being written down. One owner; not thread safe. */
  private static final class Draft {
    private final String code;
    private final String name;
    private final Kind kind;
    private final List<Condition> conditions = new ArrayList<>();
    private final List<Suspect> suspects = new ArrayList<>();
    private List<String> checks = List.of();

    Draft(String code, String name, Kind kind) {
      this.code = code;
      this.name = name;
      this.kind = kind;
    }

    Draft needs(Statistic statistic, Comparison comparison, double threshold, double weight) {
      conditions.add(new Condition(statistic, comparison, threshold, weight, Role.NEEDED));
      return this;
    }

    Draft supports(Statistic statistic, Comparison comparison, double threshold, double weight) {
      conditions.add(new Condition(statistic, comparison, threshold, weight, Role.SUPPORTS));
      return this;
    }

    /** A pattern over the layers that must explain much and better explains almost all. */
    Draft pattern(Statistic explained) {
      return needs(explained, AT_LEAST, EXPLAINED, 3)
          .supports(explained, AT_LEAST, WELL_EXPLAINED, 2);
    }

    Draft suspects(String cause, String words) {
      suspects.add(new Suspect(cause, words));
      return this;
    }

    Draft checks(String... words) {
      checks = List.of(words);
      return this;
    }

    Signature apart(String words) {
      return new Signature(code, name, kind, conditions, suspects, checks, words);
    }
  }
}
