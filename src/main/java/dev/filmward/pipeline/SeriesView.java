package dev.filmward.pipeline;

import dev.filmward.capability.Capability;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.film.Characteristic;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.gauge.calibration.FilmScalings;
import dev.filmward.rule.SeriesTests;
import dev.filmward.rule.Signal;
import dev.filmward.store.FigureRow;
import dev.filmward.store.ScreenedSample;
import dev.filmward.subgroup.Subgroup;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Everything a chart of one series shows.
 *
 * @param specs what was asked of it
 * @param rows samples in time order, also those in which it was not measured; of a long span those
 *     that a chart can show
 * @param signals by the index of their row
 * @param limits frozen versions first to last, or the one on trial
 * @param onTrial whether the limits are on trial: shown, and without alarms
 * @param heldOut samples that are not charted, the newest of them
 * @param averages where they are asked for or chosen, and limits hold
 */
public record SeriesView(
    String line,
    Structure structure,
    Characteristic characteristic,
    SpecTimes specs,
    List<FigureRow> rows,
    List<SignalAt> signals,
    List<LimitsVersion> limits,
    boolean onTrial,
    List<HeldOut> heldOut,
    Summary summary,
    Rescaled rescaled,
    Optional<Averages> averages) {

  /**
   * The moving average of the means ({@link SeriesTests#AVERAGE}).
   *
   * @param isChosen whether its test is one of those that are shown
   * @param ofRows for each row, in standard deviations of its mean off the centre line; NaN where
   *     nothing was measured or no limits held
   */
  public record Averages(boolean isChosen, List<Double> ofRows) {
    /** The limit on both sides of the centre line, in the same unit. */
    public static final double LIMIT = SeriesTests.AVERAGE.asymptoticLimit();

    public Averages {
      ofRows = List.copyOf(ofRows);
    }
  }

  /** Which readings are shown. */
  public enum Readings {
    /** With the velocities that people corrected. */
    CORRECTED,
    /** As the gauge exported them: without limits, since these are of the corrected ones. */
    EXPORTED
  }

  /**
   * How the readings of the span were re-scaled.
   *
   * @param readings which of them are shown
   * @param film versions of all layers
   * @param otherwise limits that were computed of readings at another velocity
   */
  public record Rescaled(Readings readings, FilmScalings film, Set<Integer> otherwise) {
    public Rescaled {
      otherwise = Set.copyOf(otherwise);
    }
  }

  /**
   * A sample that is not charted, since it looks misread or somebody left it out.
   *
   * @param exported what was read of the characteristic, as exported; empty where nothing was
   */
  public record HeldOut(ScreenedSample sample, Optional<Subgroup> exported) {}

  /** A test fulfilled at a row. */
  public record SignalAt(int index, Signal signal) {}

  /**
   * Figures over all samples of the span, whether their rows are shown or not.
   *
   * @param capability of the readings that were judged
   */
  public record Summary(
      long samples,
      long readings,
      OptionalDouble mean,
      OptionalDouble sigmaWithin,
      OptionalDouble sigmaOverall,
      Capability capability,
      Judged judged) {}

  /**
   * Which readings of a span the capability is of: where more than one specification held in it,
   * those that were made under the last of them.
   *
   * @param spec by which they are judged
   */
  public record Judged(SpecTimes.Spec spec, long readings) {}

  /** Individual specification limits of the characteristic. */
  public SpecLimits spec() {
    return structure.spec(characteristic);
  }

  /** Specification limits for the mean of a sample. */
  public SpecLimits average() {
    return structure.average(characteristic);
  }

  /** The limits in force at a row. */
  public Optional<LimitsVersion> inForce(FigureRow row) {
    return SeriesJudge.inForce(limits, row.takenAt());
  }
}
