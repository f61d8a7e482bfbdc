package dev.filmward.pipeline;

import dev.filmward.capability.NormalityGate;
import dev.filmward.drift.Change;
import dev.filmward.drift.Forecast;
import dev.filmward.drift.Slope;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What a span of one characteristic shows beside its means: lanes in time, the distribution of its
 * readings, and whether its level moves. Lengths in micrometres. Immutable.
 *
 * @param spread empty where nothing was measured
 */
public record LayerLook(Lanes lanes, Optional<Spread> spread, Movement movement) {

  public LayerLook {
    if (lanes == null || movement == null) {
      throw new IllegalArgumentException("a look has lanes and a movement, be they empty");
    }
  }

  /**
   * Means of lanes in time. Where there are more samples than columns, so many neighbouring ones
   * share a column.
   *
   * @param lanes numbers of the lanes, ascending
   * @param samplesPerColumn at least 1
   */
  public record Lanes(List<Integer> lanes, int samplesPerColumn, List<Column> columns) {
    public Lanes {
      lanes = List.copyOf(lanes);
      columns = List.copyOf(columns);
    }
  }

  /**
   * One column of lanes.
   *
   * @param means in the order of the lanes; empty where a lane was not measured
   */
  public record Column(Instant from, Instant to, List<Optional<Double>> means) {
    public Column {
      means = List.copyOf(means);
    }
  }

  /**
   * How the readings of the span are distributed.
   *
   * @param readings how many were looked at; of very many only the newest
   * @param start left edge of the first bin
   * @param width of each bin, um
   * @param counts readings in each bin
   * @param outside the specification for single readings
   * @param tails the points that 0.135, 50 and 99.865 % of the readings lie below, in order; empty
   *     where there are too few readings for that
   */
  public record Spread(
      long readings,
      double mean,
      double sigma,
      double start,
      double width,
      List<Long> counts,
      Outside outside,
      List<Double> tails,
      NormalityGate normality) {
    public Spread {
      counts = List.copyOf(counts);
      tails = List.copyOf(tails);
    }
  }

  /** Readings outside the specification for single ones; empty where that end is not specified. */
  public record Outside(Optional<Long> below, Optional<Long> above) {}

  /**
   * Whether the level moves, by the latest means of the span.
   *
   * @param samples how many means were looked at
   * @param line the level as it moves, to be drawn: two points of a slope, four of a step; empty
   *     without a change
   */
  public record Movement(
      int samples,
      Optional<Change> change,
      Optional<Slope> slope,
      List<Point> line,
      List<Meeting> meetings) {
    public Movement {
      line = List.copyOf(line);
      meetings = List.copyOf(meetings);
    }
  }

  /** A place on a chart. */
  public record Point(Instant at, double um) {}

  /** When the mean is expected at a limit, looking a day ahead. */
  public record Meeting(Limit limit, double um, Forecast forecast) {}

  /** Limits that a level may move to. */
  public enum Limit {
    LOWER_CONTROL,
    UPPER_CONTROL,
    LOWER_SPECIFICATION,
    UPPER_SPECIFICATION;

    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }
}
