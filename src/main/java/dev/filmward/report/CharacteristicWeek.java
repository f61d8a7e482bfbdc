package dev.filmward.report;

import dev.filmward.film.Characteristic;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A layer, the total or a share in one week. Lengths in um, of a share a fraction. Immutable.
 *
 * <p>Where the specification changed within the week, all figures but the chart are of what was
 * made under the last one, and what was made before has its own.
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
 * @param since when the specification changed; empty where one held for all that was made
 * @param earlier in the order of time
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
    List<TrendWeek> trend,
    Optional<Instant> since,
    List<EarlierSpec> earlier) {

  @SuppressWarnings({"ConstantValue", "OptionalAssignedToNull"}) // kept before these were there
  public CharacteristicWeek {
    since = since == null ? Optional.empty() : since;
    earlier = earlier == null ? List.of() : List.copyOf(earlier);
    chart = List.copyOf(chart);
    lanes = List.copyOf(lanes);
    trend = List.copyOf(trend);
  }

  /** Places in the trend of weeks that are judged by another specification than those before. */
  public List<Integer> specSteps() {
    List<Integer> steps = new ArrayList<>();
    Optional<Bounds> before = Optional.empty();
    for (int i = 0; i < trend.size(); i++) {
      TrendWeek week = trend.get(i);
      if (week.samples() > 0 && week.individual().isPresent()) {
        if (before.filter(bounds -> !bounds.equals(week.individual().get())).isPresent()) {
          steps.add(i);
        }
        before = week.individual();
      }
    }
    return steps;
  }

  public boolean isShare() {
    return kind == Characteristic.Kind.SHARE;
  }

  /**
   * What was made in the week under an earlier specification.
   *
   * @param from empty where it held when the week began
   * @param index against it, of these readings alone
   * @param observedPpm of these readings outside it; empty without one
   */
  public record EarlierSpec(
      Optional<Instant> from,
      Bounds individual,
      Bounds average,
      long samples,
      long readings,
      OptionalDouble mean,
      OptionalDouble sigmaOverall,
      Steadiness steadiness,
      IndexWeek index,
      OptionalDouble observedPpm) {}

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
        steadiness.judged() > 0 && steadiness.stable(),
        Optional.of(individual));
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
   * @param individual the specification by which it was judged; empty in a report of before this
   *     was kept
   */
  public record TrendWeek(
      String week,
      long samples,
      OptionalDouble mean,
      OptionalDouble sigmaOverall,
      OptionalDouble ppk,
      OptionalDouble atLeast,
      boolean stable,
      Optional<Bounds> individual) {
    @SuppressWarnings({"ConstantValue", "OptionalAssignedToNull"}) // kept before this was there
    public TrendWeek {
      individual = individual == null ? Optional.empty() : individual;
    }
  }

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
