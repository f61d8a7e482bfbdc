package dev.filmward.diagnosis;

import static dev.filmward.diagnosis.Condition.Comparison.AT_LEAST;
import static dev.filmward.diagnosis.Condition.Comparison.AT_MOST;
import static dev.filmward.diagnosis.Statistic.DAILY_LAYERS;
import static dev.filmward.diagnosis.Statistic.DAILY_MATERIAL_EXPLAINED;
import static dev.filmward.diagnosis.Statistic.DAILY_Z;
import static dev.filmward.diagnosis.Statistic.FIRST_LAYER_EXPLAINED;
import static dev.filmward.diagnosis.Statistic.ONE_RESIN_EXPLAINED;
import static dev.filmward.diagnosis.Statistic.SCATTER_POSITION;
import static dev.filmward.diagnosis.Statistic.SCATTER_SKEW;
import static dev.filmward.diagnosis.Statistic.SCATTER_Z;
import static dev.filmward.diagnosis.Statistic.STEP_RATHER_THAN_DRIFT;
import static dev.filmward.diagnosis.Statistic.TO_CALIBRATION;

import dev.filmward.diagnosis.Signature.Kind;
import java.util.List;

/** Signatures of calibration, temperature and couplant. */
final class GaugeSignatures {
  /** From this on readings are skewed by more than chance. */
  private static final double SKEWED = 0.7;

  static List<Signature> all() {
    return List.of(zeroOffset(), velocityChanged(), temperatureWave(), couplantCounted());
  }

  private GaugeSignatures() {}

  private static Signature zeroOffset() {
    return SignatureDraft.of(
            "zero-offset", "The first layer is off since a calibration", Kind.MEASUREMENT)
        .pattern(FIRST_LAYER_EXPLAINED)
        .needs(TO_CALIBRATION, AT_MOST, SignatureDraft.AT_BOUNDARY, 2)
        .needs(STEP_RATHER_THAN_DRIFT, AT_LEAST, SignatureDraft.HARDLY_DRIFT, 1)
        .suspects("gauge-calibration", "zero offset of the gauge")
        .checks(
            "Read check standards of two thicknesses: the same micrometres off in both?",
            "Set the zero anew by the gauge's instructions")
        .apart("Two check standards: an offset is the same in um, a velocity the same in %.");
  }

  private static Signature velocityChanged() {
    return SignatureDraft.of(
            "velocity-changed",
            "Layers of one resin are scaled since a calibration",
            Kind.MEASUREMENT)
        .pattern(ONE_RESIN_EXPLAINED)
        .needs(TO_CALIBRATION, AT_MOST, SignatureDraft.AT_BOUNDARY, 2)
        .needs(STEP_RATHER_THAN_DRIFT, AT_LEAST, SignatureDraft.HARDLY_DRIFT, 1)
        .suspects("gauge-calibration", "another sound velocity was set")
        .checks(
            "Compare the velocity set with the calibration record",
            "Read check standards of two thicknesses of that resin",
            "Compare the layer's share with the feeder's kg/h")
        .apart("Two check standards: an offset is the same in um, a velocity the same in %.");
  }

  private static Signature temperatureWave() {
    return SignatureDraft.of("temperature-wave", "All layers swing with the day", Kind.MEASUREMENT)
        .needs(DAILY_Z, AT_LEAST, DailyLook.CLEAR, 3)
        .supports(DAILY_LAYERS, AT_LEAST, 0.6, 2)
        .supports(DAILY_MATERIAL_EXPLAINED, AT_LEAST, 0.9, 2)
        .suspects("gauge-calibration", "samples or gauge get warm by day")
        .suspects("die-air-ring", "cooling air gets warm by day")
        .checks(
            "Compare the wave with a thermometer beside the gauge",
            "Let samples lie an hour at 23 \u00b0C before reading",
            "Compare it with the cooling air's temperature")
        .apart("Samples conditioned alike that still swing: it is the process.");
  }

  private static Signature couplantCounted() {
    return SignatureDraft.of(
            "couplant-counted", "The outermost layer is thick now and then", Kind.MEASUREMENT)
        .needs(SCATTER_SKEW, AT_LEAST, SKEWED, 3)
        .needs(SCATTER_POSITION, AT_MOST, 1, 2)
        .needs(SCATTER_Z, AT_LEAST, ScatterLook.CLEAR, 5)
        .suspects("gauge-misread", "couplant or air counted as film")
        .checks("Wipe probe and film, use less couplant, press evenly", "Read the same spot again")
        .apart("Readings with a clean probe that come back to usual.");
  }
}
