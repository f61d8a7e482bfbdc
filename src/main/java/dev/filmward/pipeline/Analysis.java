package dev.filmward.pipeline;

import dev.filmward.capability.Capability;
import dev.filmward.chart.Band;
import dev.filmward.film.Sample;
import dev.filmward.film.SeriesKey;
import dev.filmward.film.SpecLimits;
import dev.filmward.intake.FileCount;
import dev.filmward.rule.Side;
import dev.filmward.rule.Signal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What files say of every series in them, under limits computed from all their subgroups or from a
 * baseline among them.
 *
 * @param files what became of each file, in the order in which they were given
 * @param thinned stored samples without readings, which are in no series
 * @param prices what the tests cost on each line and structure, where that was asked for
 * @param correlations how the layers of each film move together, where that was asked for
 * @param series by line, structure, then layers by position, total, shares
 */
public record Analysis(
    List<FileCount> files,
    List<Thinned> thinned,
    List<Series> series,
    List<LinePrice> prices,
    List<FilmCorrelations> correlations) {
  public Analysis {
    correlations = List.copyOf(correlations);
    prices = List.copyOf(prices);
    thinned = List.copyOf(thinned);
    files = List.copyOf(files);
    series = List.copyOf(series);
  }

  /**
   * Samples of a structure on a line whose readings were thinned away, and when they were taken.
   */
  public record Thinned(String line, String structure, long samples, Instant from, Instant to) {
    static Thinned of(Sample sample) {
      return new Thinned(
          sample.key().line(), sample.key().structure(), 1, sample.takenAt(), sample.takenAt());
    }

    Thinned and(Thinned other) {
      return new Thinned(
          line,
          structure,
          samples + other.samples,
          other.from.isBefore(from) ? other.from : from,
          other.to.isAfter(to) ? other.to : to);
    }
  }

  /**
   * One characteristic of a structure on a line. Lengths in micrometres, shares as fractions.
   *
   * @param mean grand mean, each subgroup weighted by its size
   * @param rangeBar mean range of the subgroups with two readings or more
   * @param sigmaWithin spread within subgroups, from their ranges
   * @param sigmaOverall sample standard deviation of all readings
   * @param baseline how many subgroups the limits come from
   * @param xbar limits of the mean and {@code range} of the range, for the usual subgroup size;
   *     empty where no subgroup has two readings
   */
  public record Series(
      SeriesKey key,
      Sizes sizes,
      double mean,
      OptionalDouble rangeBar,
      OptionalDouble sigmaWithin,
      OptionalDouble sigmaOverall,
      long baseline,
      Optional<Band> xbar,
      Optional<Band> range,
      SpecLimits spec,
      Capability capability,
      List<PointSignal> signals,
      List<Charted> charts,
      Optional<SeriesDetail> detail) {
    public Series {
      signals = List.copyOf(signals);
      charts = List.copyOf(charts);
    }

    /** The same series with more charts and another detail. */
    Series with(List<Charted> moreCharts, Optional<SeriesDetail> other) {
      List<Charted> all = new ArrayList<>(charts);
      all.addAll(moreCharts);
      return new Series(
          key,
          sizes,
          mean,
          rangeBar,
          sigmaWithin,
          sigmaOverall,
          baseline,
          xbar,
          range,
          spec,
          capability,
          signals,
          all,
          other);
    }
  }

  /**
   * How many subgroups and readings there are.
   *
   * @param usual the most frequent subgroup size, the larger of two
   */
  public record Sizes(long subgroups, long readings, int least, int greatest, int usual) {}

  /**
   * A test fulfilled at a point.
   *
   * @param index of the subgroup in its series, from 0 in time order
   */
  public record PointSignal(int index, String sample, Instant takenAt, Signal signal) {}

  /**
   * Another chart of the series.
   *
   * @param bands limits by the part of the chart; of an average or sum, in sigma of the mean
   */
  public record Charted(String chart, Map<String, Band> bands, List<ChartSignal> signals) {
    public Charted {
      bands = Collections.unmodifiableMap(new LinkedHashMap<>(bands));
      signals = List.copyOf(signals);
    }
  }

  /**
   * A point beyond the limits of a part of another chart.
   *
   * @param behind layers or the lane that the point is off by, the most telling first; may be empty
   */
  public record ChartSignal(String part, int index, Side side, List<String> behind) {
    public ChartSignal {
      behind = List.copyOf(behind);
    }

    ChartSignal(String part, int index, Side side) {
      this(part, index, side, List.of());
    }
  }
}
