package dev.filmward.diagnosis;

import static dev.filmward.diagnosis.Condition.Comparison.AT_LEAST;
import static dev.filmward.diagnosis.Condition.Comparison.AT_MOST;
import static dev.filmward.diagnosis.Statistic.CURVATURE_EXPLAINED;
import static dev.filmward.diagnosis.Statistic.CURVATURE_OPPOSED_Z;
import static dev.filmward.diagnosis.Statistic.LANES_ALIKE;
import static dev.filmward.diagnosis.Statistic.LANES_COMMON_EXPLAINED;
import static dev.filmward.diagnosis.Statistic.LANES_ONE_LAYER_EXPLAINED;
import static dev.filmward.diagnosis.Statistic.LANES_TOTAL_Z;

import dev.filmward.diagnosis.Signature.Kind;
import java.util.List;

/** Signatures of profiles across the web. */
final class ProfileSignatures {
  static List<Signature> all() {
    return List.of(profileOfAllLayers(), profileOfOneLayer(), edgeAgainstCentre());
  }

  private ProfileSignatures() {}

  private static Signature profileOfAllLayers() {
    return SignatureDraft.of(
            "profile-of-all-layers", "Lanes differ, in all layers alike", Kind.PROCESS)
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
        .apart("A place that stays with the die is die or air ring; one that wanders is draught.");
  }

  private static Signature profileOfOneLayer() {
    return SignatureDraft.of(
            "profile-of-one-layer", "Lanes differ in one layer, the total is flat", Kind.PROCESS)
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
        .apart("Another melt temperature that moves the profile: it is flow, no plug.");
  }

  private static Signature edgeAgainstCentre() {
    return SignatureDraft.of(
            "edge-against-centre", "Two neighbours trade between edge and centre", Kind.PROCESS)
        .needs(CURVATURE_EXPLAINED, AT_LEAST, 0.65, 3)
        .needs(CURVATURE_OPPOSED_Z, AT_LEAST, 3, 2)
        .supports(CURVATURE_EXPLAINED, AT_LEAST, 0.9, 2)
        .supports(LANES_TOTAL_Z, AT_MOST, 4, 1)
        .suspects("melt-temperature", "the thinner melt moves to the walls: encapsulation")
        .suspects("resin-lot", "another viscosity of one of the two resins")
        .checks(
            "Compare melt temperatures and viscosities of the two neighbours",
            "Compare melt flow rates of the lots in use")
        .apart("It follows the melt temperature of either layer within the hour.");
  }
}
