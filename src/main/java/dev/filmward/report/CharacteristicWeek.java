package dev.filmward.report;

import dev.filmward.film.Characteristic;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A layer, the total or a share in one week. Lengths in um, of a share a fraction. Immutable.
 *
 * @param name of the layer; of the total empty
 * @param individual specification for single readings
 * @param average specification for sample means
 * @param effective number of independent readings that tell as much of the spread
 * @param sigmaWithin from mean ranges, of a share pooled from the variances of its samples; empty
 *     where there is one reading a sample
 * @param lag1 autocorrelation of the sample means; 0 where there are too few
 * @param observedPpm readings outside the individual specification; empty without one
 * @param expectedPpm of a normal distribution with the spread of all readings; empty where the
 *     readings are not normal, too few, or the process is not known to be stable
 * @param averages Ppk of sample means against the average specification
 * @param worstLane of the lanes, by Ppk of single readings
 * @param chart empty for a share
 * @param trend oldest first, this week last
 */
public record CharacteristicWeek(
    Characteristic.Kind kind,
    int position,
    String name,
    Bounds individual,
    Bounds average,
    long samples,
    long readings,
    double effective,
    OptionalDouble mean,
    OptionalDouble sigmaWithin,
    OptionalDouble sigmaOverall,
    double lag1,
    Steadiness steadiness,
    IndexWeek index,
    OptionalDouble averages,
    Optional<LaneWeek> worstLane,
    Shape shape,
    OptionalDouble observedPpm,
    OptionalDouble expectedPpm,
    Optional<Bins> bins,
    List<ChartPoint> chart,
    List<LaneWeek> lanes,
    double laneShare,
    Optional<GiveawayWeek> giveaway,
    List<TrendWeek> trend) {

  public CharacteristicWeek {
    chart = List.copyOf(chart);
    lanes = List.copyOf(lanes);
    trend = List.copyOf(trend);
  }

  public boolean isShare() {
    return kind == Characteristic.Kind.SHARE;
  }

  /**
   * How steady the process was.
   *
   * @param judged samples that had limits in force
   * @param signalled of these, with a test fulfilled on the mean or the range chart
   * @param stable no more signals than chance makes
   */
  public record Steadiness(long judged, long signalled, boolean stable) {}

  /**
   * Whether the readings are normally distributed.
   *
   * @param word normal, not_normal or not_judged
   * @param p of the test of Anderson and Darling, where it decided
   */
  public record Shape(
      String word, OptionalDouble p, OptionalDouble skewness, OptionalDouble excessKurtosis) {}

  /** Readings in classes of equal width from {@code start} on. */
  public record Bins(double start, double width, List<Long> counts) {
    public Bins {
      counts = List.copyOf(counts);
    }
  }

  /**
   * A sample on the chart of the week; of very many those that show its course, and all with
   * signals.
   *
   * @param mean empty where it was not measured; the limits empty where none were in force
   * @param signals words such as xbar:beyond-limit:high
   */
  public record ChartPoint(
      Instant at,
      String roll,
      String sample,
      OptionalDouble mean,
      OptionalDouble range,
      OptionalDouble lower,
      OptionalDouble centre,
      OptionalDouble upper,
      List<String> signals) {
    public ChartPoint {
      signals = List.copyOf(signals);
    }
  }

  /** What a later report's trend says of it. */
  TrendWeek asTrend(String week) {
    return new TrendWeek(
        week,
        samples,
        mean,
        sigmaOverall,
        index.trusted(index.ppk()),
        index.trusted(index.atLeast()),
        steadiness.judged() > 0 && steadiness.stable());
  }

  /** One lane; {@code ppk} of single readings, empty without a specification or spread. */
  public record LaneWeek(
      int lane, long readings, double mean, OptionalDouble sigma, OptionalDouble ppk) {}

  /**
   * A week of the trend, from the figures of the samples.
   *
   * @param ppk with the spread of all readings: of this week and the one before by the method of
   *     its index, of earlier ones by that of the normal distribution; empty where readings are too
   *     few for an index
   * @param atLeast its lower confidence limit; of weeks before the last one by the normal
   *     approximation (Bissell 1990), which is near enough for a drawing
   */
  public record TrendWeek(
      String week,
      long samples,
      OptionalDouble mean,
      OptionalDouble sigmaOverall,
      OptionalDouble ppk,
      OptionalDouble atLeast,
      boolean stable) {}

  /**
   * Resin beyond what the specification needs. Negative is a risk, no saving.
   *
   * @param nominalUm above the least mean that the contract asks for
   * @param achievableUm above the lowest mean that keeps the index that is asked for; empty while
   *     the process is not stable
   * @param gPerM2 that thickness as weight; empty without a density
   * @param money of the week, where output and price are known
   */
  public record GiveawayWeek(
      OptionalDouble nominalUm,
      OptionalDouble achievableUm,
      OptionalDouble gPerM2,
      OptionalDouble kgPerHour,
      Optional<Money> money) {}

  /** An amount a week, at the price of a day. */
  public record Money(double amount, String currency, String priceAsOf) {}
}
