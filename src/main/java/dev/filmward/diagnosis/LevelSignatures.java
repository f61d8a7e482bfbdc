package dev.filmward.diagnosis;

import static dev.filmward.diagnosis.Condition.Comparison.AT_LEAST;
import static dev.filmward.diagnosis.Condition.Comparison.AT_MOST;
import static dev.filmward.diagnosis.Statistic.COMMON_EXPLAINED;
import static dev.filmward.diagnosis.Statistic.EXTRUDER_EXPLAINED;
import static dev.filmward.diagnosis.Statistic.LAYERS_MOVED;
import static dev.filmward.diagnosis.Statistic.ONE_LAYER_EXPLAINED;
import static dev.filmward.diagnosis.Statistic.ONE_SOURCE_EXPLAINED;
import static dev.filmward.diagnosis.Statistic.SCATTER_Z;
import static dev.filmward.diagnosis.Statistic.STEP_RATHER_THAN_DRIFT;
import static dev.filmward.diagnosis.Statistic.TOTAL_FOLLOWS_Z;
import static dev.filmward.diagnosis.Statistic.TO_CALIBRATION;
import static dev.filmward.diagnosis.Statistic.TO_RESIN_LOT;

import dev.filmward.diagnosis.Signature.Kind;
import java.util.List;

/** Signatures of means that step: layers together, alone, at a resin lot. */
final class LevelSignatures {
  static List<Signature> all() {
    return List.of(allLayersTogether(), oneLayerStep(), oneExtruderStep(), stepAtResinLot());
  }

  private LevelSignatures() {}

  private static Signature allLayersTogether() {
    return SignatureDraft.of("all-layers-together", "All layers move together", Kind.PROCESS)
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
                + " a tape measure and the kg/h can.");
  }

  private static Signature oneLayerStep() {
    return SignatureDraft.of(
            "one-layer-step", "One layer moves at once, the total follows", Kind.PROCESS)
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
                + " the distribution or the reading.");
  }

  private static Signature oneExtruderStep() {
    return SignatureDraft.of(
            "one-extruder-step", "All layers of one extruder move at once", Kind.PROCESS)
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
        .apart("The extruder's kg/h tells it from a velocity set for its resin.");
  }

  private static Signature stepAtResinLot() {
    return SignatureDraft.of(
            "step-at-resin-lot", "A step where a resin lot was changed", Kind.PROCESS)
        .needs(TO_RESIN_LOT, AT_MOST, SignatureDraft.AT_BOUNDARY, 3)
        .needs(STEP_RATHER_THAN_DRIFT, AT_LEAST, SignatureDraft.HARDLY_DRIFT, 2)
        .needs(COMMON_EXPLAINED, AT_MOST, SignatureDraft.EXPLAINED, 0)
        .supports(ONE_SOURCE_EXPLAINED, AT_LEAST, 0.9, 3)
        .suspects("resin-lot", "another viscosity or bulk density of the new lot or silo")
        .checks(
            "Compare the certificates of both lots: melt flow rate, density",
            "Check the feeder's calibration factor for the new bulk density",
            "Compare melt pressure and motor load before and after")
        .apart("A step that does not come back with the old lot has another cause.");
  }
}
