package dev.filmward.diagnosis;

import static dev.filmward.diagnosis.Condition.Comparison.AT_LEAST;
import static dev.filmward.diagnosis.Condition.Comparison.AT_MOST;
import static dev.filmward.diagnosis.Statistic.CORE_MOVED;
import static dev.filmward.diagnosis.Statistic.LEVELS_OFF;
import static dev.filmward.diagnosis.Statistic.MOVED_PERCENT;
import static dev.filmward.diagnosis.Statistic.ONE_SOURCE_EXPLAINED;
import static dev.filmward.diagnosis.Statistic.STEP_BACK_AT_SCREEN_Z;
import static dev.filmward.diagnosis.Statistic.STEP_RATHER_THAN_DRIFT;
import static dev.filmward.diagnosis.Statistic.TO_CALIBRATION;
import static dev.filmward.diagnosis.Statistic.TO_RESIN_LOT;
import static dev.filmward.diagnosis.Statistic.TO_RESTART;

import dev.filmward.diagnosis.Signature.Kind;
import java.util.List;

/** Signatures of means that drift. */
final class DriftSignatures {
  static List<Signature> all() {
    return List.of(slowDecline(), slowRise(), coreSinceStart());
  }

  private DriftSignatures() {}

  private static Signature slowDecline() {
    return SignatureDraft.of("slow-decline", "One extruder delivers less and less", Kind.PROCESS)
        .pattern(ONE_SOURCE_EXPLAINED)
        .needs(STEP_RATHER_THAN_DRIFT, AT_MOST, SignatureDraft.NO_DRIFT, 2)
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
        .apart("Pressure before the screen rises where it blinds; else it is the feeder.");
  }

  private static Signature slowRise() {
    return SignatureDraft.of("slow-rise", "One extruder delivers more and more", Kind.PROCESS)
        .pattern(ONE_SOURCE_EXPLAINED)
        .needs(STEP_RATHER_THAN_DRIFT, AT_MOST, SignatureDraft.NO_DRIFT, 2)
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
        .apart("Weighing the feeder's output tells feeder from melt.");
  }

  private static Signature coreSinceStart() {
    return SignatureDraft.of(
            "core-since-start", "The core drifts since the start and levels off", Kind.PROCESS)
        .pattern(ONE_SOURCE_EXPLAINED)
        .needs(CORE_MOVED, AT_LEAST, 1, 1)
        .needs(STEP_RATHER_THAN_DRIFT, AT_MOST, SignatureDraft.NO_DRIFT, 2)
        .needs(TO_RESTART, AT_MOST, 6, 2)
        .supports(LEVELS_OFF, AT_LEAST, 2, 2)
        .suspects("start-up", "regrind builds up after the start")
        .suspects("resin-lot", "bulk density of the core blend changes")
        .checks(
            "Compare the regrind share set with that fed",
            "Weigh a litre of the core blend",
            "Compare the core extruder's kg/h with its set-point")
        .apart("With the regrind off for an hour the core goes back, if that is it.");
  }
}
