package dev.filmward.pipeline;

import dev.filmward.alarm.LineMode;
import dev.filmward.chart.Band;
import dev.filmward.chart.LimitsState;
import dev.filmward.film.Characteristic;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.gauge.screen.Misread;
import dev.filmward.rule.Signal;
import dev.filmward.subgroup.Subgroup;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** All lines at a glance. */
public record Board(Instant now, List<LineState> lines) {

  /** What a line as a whole asks of a person; the first that fits. */
  public enum Ask {
    /** An alarm that nobody has taken on yet, or whose excursion goes on. */
    ACT,
    /** It is down, starting or changing over. */
    NOT_RUNNING,
    /** No fresh samples. */
    STALE,
    /** Frozen limits are still missing. */
    COLLECTING,
    /** The last sample looks misread and is held out of charts. */
    GAUGE,
    /** A test is fulfilled at the last sample, but no alarm is open. */
    WATCH,
    /** Nothing. */
    CALM
  }

  /**
   * One line with what it makes now.
   *
   * @param mode what it is doing, as people said it
   * @param interval the usual time between samples
   * @param heldOut why the last sample is not charted, where it is not
   */
  public record LineState(
      String line,
      Structure structure,
      Ask ask,
      boolean stale,
      SampleKey lastSample,
      Instant lastTakenAt,
      Optional<Duration> interval,
      LineMode mode,
      OpenAlarms alarms,
      LimitsInForce limits,
      Optional<HeldOut> heldOut,
      List<CharacteristicState> characteristics) {}

  /**
   * Why a sample is not charted.
   *
   * @param kinds in what ways it looks misread
   * @param evidence in sentences
   */
  public record HeldOut(List<Misread> kinds, String evidence) {
    public HeldOut {
      kinds = List.copyOf(kinds);
    }
  }

  /**
   * Alarms of a line that are not closed.
   *
   * @param held those of them that are held back
   */
  public record OpenAlarms(int open, int unacknowledged, int held) {}

  /** The version in force, 0 where none is frozen, and how many samples there are so far. */
  public record LimitsInForce(LimitsState state, int version, long samples) {}

  /** The reading that was the thinnest across the web. */
  public record ThinnestLane(int lane, double um) {}

  /**
   * A layer or the total at the last sample.
   *
   * @param last empty where it was not measured
   * @param limits of the mean, for the last subgroup's size
   * @param outOfSpec readings of the last sample outside the individual specification
   * @param recent the means of the last samples, oldest first
   */
  public record CharacteristicState(
      Characteristic characteristic,
      Optional<Subgroup> last,
      Optional<Band> limits,
      Optional<ThinnestLane> thinnest,
      int outOfSpec,
      List<Signal> signals,
      List<RecentMean> recent) {

    /** How far the mean is from its target, or else from its control chart's centre; a fraction. */
    public Optional<Double> deviation(Structure structure) {
      OptionalDouble target = structure.spec(characteristic).target();
      Optional<Double> reference =
          target.isPresent() ? Optional.of(target.getAsDouble()) : limits.map(Band::centre);
      return reference.flatMap(from -> last.map(now -> (now.mean() - from) / from));
    }
  }

  /** A mean and when its sample was taken. */
  public record RecentMean(Instant takenAt, Optional<Double> mean) {}
}
