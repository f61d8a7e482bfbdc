package dev.filmward.report;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One film on one line in one week. Immutable.
 *
 * @param plies its reported layers from the outer face, for a drawing of the film
 * @param before the verdict of the week before
 * @param characteristics layers, total, then shares
 * @param acts what to do first, the most urgent first
 */
public record FilmWeek(
    String line,
    String structure,
    String name,
    List<Ply> plies,
    Verdict verdict,
    Verdict before,
    List<CharacteristicWeek> characteristics,
    AlarmWeek alarms,
    GaugeWeek gauge,
    List<LimitsMove> limits,
    SamplesWeek samples,
    List<LeftOut> leftOut,
    List<Act> acts) {

  public FilmWeek {
    plies = List.copyOf(plies);
    characteristics = List.copyOf(characteristics);
    limits = List.copyOf(limits);
    leftOut = List.copyOf(leftOut);
    acts = List.copyOf(acts);
  }

  /** A reported layer; {@code meanUm} is empty where it was not measured. */
  public record Ply(
      int position,
      String name,
      List<String> roles,
      OptionalDouble targetUm,
      OptionalDouble meanUm) {
    public Ply {
      roles = List.copyOf(roles);
    }
  }

  /**
   * Alarms that opened in the week.
   *
   * @param openAtEnd not closed when the report was made
   * @param unexplained without a cause so far
   * @param acknowledged how many somebody took, with the median and the longest time until then, s
   * @param causes by how often, with the code that the plant gives them and their words
   */
  public record AlarmWeek(
      int opened,
      int openAtEnd,
      int unexplained,
      int acknowledged,
      OptionalDouble medianSeconds,
      OptionalDouble longestSeconds,
      List<Cause> causes) {
    public AlarmWeek {
      causes = List.copyOf(causes);
    }
  }

  /** A cause and how many alarms had it. */
  public record Cause(String code, String words, int alarms) {}

  /**
   * The gauge.
   *
   * @param flagged samples that look misread, beyond a reading or a lane that is only missing
   * @param heldOut samples with flags that are not charted
   * @param kinds samples by the code of each kind of flag, missing readings too
   * @param scalings how readings of the week are shown otherwise than exported, by the time from
   *     which that holds; a report of before this was kept has none
   * @param limitsOtherwise versions of limits that were computed of readings at another velocity
   *     than those that they are drawn over
   */
  public record GaugeWeek(
      List<CalibrationWeek> calibrations,
      long flagged,
      long heldOut,
      Map<String, Long> kinds,
      Optional<LastStudy> study,
      List<ScalingWeek> scalings,
      List<Integer> limitsOtherwise) {
    @SuppressWarnings("ConstantValue") // what was kept as JSON before these were there
    public GaugeWeek {
      scalings = scalings == null ? List.of() : List.copyOf(scalings);
      limitsOtherwise = limitsOtherwise == null ? List.of() : List.copyOf(limitsOtherwise);
      calibrations = List.copyOf(calibrations);
      kinds = Map.copyOf(kinds);
    }
  }

  /**
   * How readings of a layer are shown from a moment on: factor times the exported one and offset,
   * and where the temperature of the film was measured, times 1 + percent by kelvin / 100 times its
   * distance from {@code atC}.
   */
  public record ScalingWeek(
      Instant from,
      int position,
      String layer,
      int version,
      double factor,
      double offsetUm,
      double velocityMps,
      OptionalDouble percentPerKelvin,
      OptionalDouble atC,
      String by,
      String reason) {}

  /** A calibration in the week. */
  public record CalibrationWeek(
      Instant at,
      String by,
      String gauge,
      String layer,
      double beforeMps,
      double foundMps,
      double uMps) {}

  /** The last gauge study of the film that was finished before the week ended. */
  public record LastStudy(
      long id,
      String gauge,
      Instant finishedAt,
      String by,
      String conclusion,
      List<StudyLayer> layers) {
    public LastStudy {
      layers = List.copyOf(layers);
    }
  }

  /**
   * What a study says of a layer, and what that means for the week.
   *
   * @param sigmaUm standard deviation of the gauge, repeatability and reproducibility
   * @param percentTolerance six of them over the tolerance; empty without two limits
   * @param accepted share of the week's readings that lie inside the specification by two of them
   *     or more (guard band as ISO 14253-1, without the uncertainty of the velocity), 0 to 1; empty
   *     without a specification
   */
  public record StudyLayer(
      String layer, double sigmaUm, OptionalDouble percentTolerance, OptionalDouble accepted) {}

  /** A decision about limits in the week. */
  public record LimitsMove(Instant at, String by, int version, String state, String reason) {}

  /**
   * Whether the data are whole.
   *
   * @param received samples that came
   * @param expected by the usual time between samples while the line was said to run; 0 where there
   *     is no usual one
   * @param missingReadings places that were not measured
   * @param structureChanged whether samples were taken while the structure had other layers; these
   *     are not counted in any figure
   */
  public record SamplesWeek(
      long received, long charted, long expected, long missingReadings, long structureChanged) {}

  /** A sample that is in no figure of the report. */
  public record LeftOut(
      Instant at,
      String roll,
      String sample,
      List<String> kinds,
      String state,
      String by,
      String reason) {
    public LeftOut {
      kinds = List.copyOf(kinds);
    }
  }

  /**
   * Something to do.
   *
   * @param characteristic which layer, by name; empty for the whole film
   * @param figure what makes it urgent: an index, parts per million, a share, a number
   */
  public record Act(Kind kind, String characteristic, double figure) {
    /** The most urgent first. */
    public enum Kind {
      /** Readings out of spec, ppm. */
      OUT_OF_SPEC,
      /** Ppk below what is asked for. */
      BELOW,
      /** Samples with signals beyond chance. */
      NOT_STABLE,
      /** Alarms without a cause. */
      UNEXPLAINED_ALARMS,
      /** Samples that look misread, share of those that came. */
      MISREAD,
      /** Samples that did not come, share of those expected. */
      DATA_MISSING,
      /** No limits in force, so nothing can be called stable. */
      NO_LIMITS,
      /** Worst lane's Ppk, where the film as a whole is good. */
      WEAK_LANE,
      /** The index is above what is asked for, its confidence limit is not: more readings. */
      NOT_SHOWN,
      /** Resin that could be taken out, um. */
      GIVEAWAY
    }
  }
}
