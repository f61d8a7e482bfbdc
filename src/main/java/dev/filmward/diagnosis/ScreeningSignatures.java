package dev.filmward.diagnosis;

import static dev.filmward.diagnosis.Condition.Comparison.AT_LEAST;
import static dev.filmward.diagnosis.Condition.Comparison.AT_MOST;
import static dev.filmward.diagnosis.Statistic.FLAGGED_COUPLANT;
import static dev.filmward.diagnosis.Statistic.FLAGGED_LOST_ECHO;
import static dev.filmward.diagnosis.Statistic.FLAGGED_MISPLACED_BOUNDARY;
import static dev.filmward.diagnosis.Statistic.FLAGGED_MISSED_BOUNDARY;
import static dev.filmward.diagnosis.Statistic.FLAGGED_RANGE_END;
import static dev.filmward.diagnosis.Statistic.MASS_CHANGE_Z;
import static dev.filmward.diagnosis.Statistic.MISSING_SHARE;
import static dev.filmward.diagnosis.Statistic.MISSING_Z;
import static dev.filmward.diagnosis.Statistic.SAME_IN_A_ROW;
import static dev.filmward.diagnosis.Statistic.UPSIDE_DOWN;

import dev.filmward.diagnosis.Signature.Kind;
import java.util.List;

/** Signatures of readings that are missing, repeated or flagged. */
final class ScreeningSignatures {
  static List<Signature> all() {
    return List.of(
        boundaryMissed(),
        boundaryFlagged(),
        rangeEnd(),
        couplantFlagged(),
        echoLost(),
        stuckValues(),
        upsideDown());
  }

  private ScreeningSignatures() {}

  private static Signature boundaryMissed() {
    return flagged("boundary-missed", "A boundary is not found", FLAGGED_MISSED_BOUNDARY)
        .checks(
            "Look at gain and threshold of that boundary",
            "Make sure that the right side of the sample is up",
            "Read the same spot again")
        .apart("A section of the film shows whether the layer is there.");
  }

  private static Signature boundaryFlagged() {
    return flagged(
            "boundary-flagged", "Neighbours trade within samples", FLAGGED_MISPLACED_BOUNDARY)
        .checks("Read the same spot again, three times", "Look at the waveform")
        .apart("A misplaced boundary does not repeat; the process does.");
  }

  private static Signature rangeEnd() {
    return flagged("range-end", "Readings are pinned at the end of the range", FLAGGED_RANGE_END)
        .checks(
            "Compare the range that the gauge is set to with the recipe", "Read the check standard")
        .apart("A wider range that shows other values: it was the range.");
  }

  private static Signature couplantFlagged() {
    return flagged("couplant-flagged", "Couplant is counted as film", FLAGGED_COUPLANT)
        .checks("Wipe probe and film, use less couplant", "Read the same spot again")
        .apart("Readings with a clean probe that come back to usual.");
  }

  private static Signature echoLost() {
    return SignatureDraft.of("echo-lost", "Readings are missing", Kind.MEASUREMENT)
        .needs(MISSING_SHARE, AT_LEAST, SignatureDraft.FLAGGED_OFTEN, 2)
        .needs(MISSING_Z, AT_LEAST, 6, 2)
        .supports(FLAGGED_LOST_ECHO, AT_LEAST, SignatureDraft.FLAGGED_OFTEN, 1)
        .suspects("gauge-misread", "couplant, dirt, a worn probe")
        .checks("Clean the probe, renew the couplant", "Read the check standard")
        .apart("Echoes that come back with a clean probe.");
  }

  private static Signature stuckValues() {
    return SignatureDraft.of("stuck-values", "Samples read exactly the same", Kind.MEASUREMENT)
        .needs(SAME_IN_A_ROW, AT_LEAST, 3, 3)
        .suspects("gauge-misread", "gauge on hold, or rows copied")
        .checks("Look whether the gauge is on hold", "Compare the file with the gauge's log")
        .apart("Readings that move again once the gauge reads anew.");
  }

  private static Signature upsideDown() {
    return SignatureDraft.of("upside-down", "The sample looks turned over", Kind.MEASUREMENT)
        .needs(UPSIDE_DOWN, AT_LEAST, 50, 10)
        .supports(MASS_CHANGE_Z, AT_MOST, 3, 1)
        .suspects("gauge-misread", "the sample was read from its inner side")
        .checks("Mark the outer side and read the sample again")
        .apart("Turned back it reads as usual.");
  }

  private static SignatureDraft flagged(String code, String name, Statistic statistic) {
    return SignatureDraft.of(code, name, Kind.MEASUREMENT)
        .needs(statistic, AT_LEAST, SignatureDraft.FLAGGED_OFTEN, 3)
        .suspects("gauge-misread", "screening took these readings for misread");
  }
}
