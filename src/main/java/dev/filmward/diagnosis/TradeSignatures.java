package dev.filmward.diagnosis;

import static dev.filmward.diagnosis.Condition.Comparison.AT_LEAST;
import static dev.filmward.diagnosis.Condition.Comparison.AT_MOST;
import static dev.filmward.diagnosis.Statistic.MASS_CHANGE_Z;
import static dev.filmward.diagnosis.Statistic.ONE_SOURCE_EXPLAINED;
import static dev.filmward.diagnosis.Statistic.SCATTER_TRADE;
import static dev.filmward.diagnosis.Statistic.SCATTER_TRADE_TIME_OF_FLIGHT;
import static dev.filmward.diagnosis.Statistic.SKINS_OPPOSED_EXPLAINED;
import static dev.filmward.diagnosis.Statistic.STEP_RATHER_THAN_DRIFT;
import static dev.filmward.diagnosis.Statistic.TRADE_APART;
import static dev.filmward.diagnosis.Statistic.TRADE_EXPLAINED;
import static dev.filmward.diagnosis.Statistic.TRADE_MASS_Z;
import static dev.filmward.diagnosis.Statistic.TRADE_TIME_OF_FLIGHT_Z;

import dev.filmward.diagnosis.Signature.Kind;
import java.util.List;

/** Signatures of two layers that trade thickness, in the film or in its reading. */
final class TradeSignatures {
  static List<Signature> all() {
    return List.of(massTraded(), skinsOpposed(), boundaryMisplaced(), boundaryJumps());
  }

  private TradeSignatures() {}

  private static Signature massTraded() {
    return SignatureDraft.of("mass-traded", "Two layers trade off, the mass stays", Kind.PROCESS)
        .pattern(TRADE_EXPLAINED)
        .needs(TRADE_MASS_Z, AT_MOST, 3.3, 2)
        .supports(TRADE_MASS_Z, AT_MOST, 1.5, 1)
        .supports(ONE_SOURCE_EXPLAINED, AT_MOST, SignatureDraft.EXPLAINED, 2)
        .supports(SKINS_OPPOSED_EXPLAINED, AT_MOST, SignatureDraft.EXPLAINED, 2)
        .suspects("other", "ratio control moved one extruder up and the other down")
        .suspects("other", "feedblock: split, vane or pin")
        .suspects("melt-temperature", "a zone of feedblock or die")
        .checks(
            "Compare the ratio set-points with those of the recipe",
            "Look at feedblock pins, vanes and zone temperatures",
            "Read the same spot on the gauge again: a process fault reads the same")
        .apart(
            "Read the same spot again, three times: a process fault repeats, a misplaced"
                + " boundary does not.");
  }

  private static Signature skinsOpposed() {
    return SignatureDraft.of(
            "skins-opposed", "Outer skin up, inner skin down, or the other way", Kind.PROCESS)
        .pattern(SKINS_OPPOSED_EXPLAINED)
        .supports(TRADE_MASS_Z, AT_MOST, 3.3, 2)
        .supports(MASS_CHANGE_Z, AT_MOST, 3, 2)
        .suspects("melt-temperature", "inner and outer zone of feedblock or die differ")
        .suspects("other", "feedblock split between the skins, die gap")
        .checks(
            "Compare the inner and outer zone temperatures of the die",
            "Look at the feedblock's split between the skins",
            "Make sure that the sample was not turned over")
        .apart("A turned sample is mirrored in all layers, not only the skins.");
  }

  private static Signature boundaryMisplaced() {
    return SignatureDraft.of(
            "boundary-misplaced", "A boundary is read in the wrong place", Kind.MEASUREMENT)
        .pattern(TRADE_EXPLAINED)
        .needs(TRADE_TIME_OF_FLIGHT_Z, AT_MOST, 3.3, 2)
        .needs(TRADE_APART, AT_MOST, 1, 0)
        .supports(TRADE_TIME_OF_FLIGHT_Z, AT_MOST, 1.5, 1)
        .supports(ONE_SOURCE_EXPLAINED, AT_MOST, SignatureDraft.EXPLAINED, 2)
        .supports(STEP_RATHER_THAN_DRIFT, AT_LEAST, 0, 1)
        .suspects("gauge-misread", "gate, threshold or polarity: the wrong edge of an echo")
        .checks(
            "Read the same spot again, three times",
            "Look at the waveform: is the echo of that boundary clear?",
            "Cut a section of one lane and look at it")
        .apart(
            "Read the same spot again, three times: a misplaced boundary does not repeat, or"
                + " moves with the gate; a section settles it.");
  }

  private static Signature boundaryJumps() {
    return SignatureDraft.of(
            "boundary-jumps", "A boundary jumps between readings", Kind.MEASUREMENT)
        .needs(SCATTER_TRADE, AT_MOST, -0.6, 3)
        .supports(SCATTER_TRADE, AT_MOST, -0.85, 2)
        .supports(SCATTER_TRADE_TIME_OF_FLIGHT, AT_MOST, 0.25, 2)
        .suspects("gauge-misread", "weak echo: noise moves the boundary")
        .checks(
            "Read the same spot again, three times",
            "Clean the probe, renew the couplant",
            "Look at the waveform of that boundary")
        .apart("Repeat readings of one spot that scatter alike are the gauge, else the film.");
  }
}
