package dev.filmward.report;

import dev.filmward.capability.Answer;
import dev.filmward.capability.CapabilityQuestion;
import dev.filmward.capability.CapabilityStatement;
import dev.filmward.capability.IndexLimits;
import dev.filmward.capability.Indices;
import dev.filmward.capability.NormalityGate;
import dev.filmward.capability.PercentileIndices;
import dev.filmward.capability.SampleSizeWarning;
import dev.filmward.capability.Stability;
import dev.filmward.film.Characteristic;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.LayerLook;
import dev.filmward.report.CharacteristicWeek.Bins;
import dev.filmward.report.CharacteristicWeek.LaneWeek;
import dev.filmward.report.CharacteristicWeek.Shape;
import dev.filmward.report.CharacteristicWeek.Steadiness;
import dev.filmward.report.CharacteristicWeek.TrendWeek;
import dev.filmward.report.IndexWeek.Kind;
import dev.filmward.report.IndexWeek.Method;
import dev.filmward.report.IndexWeek.Standing;
import dev.filmward.report.IndexWeek.Why;
import dev.filmward.stats.Moments;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Takes what a week's readings of a characteristic add up to, gives its part of the report. For one
 * thread.
 */
final class CharacteristicJudge {
  private static final double PER_MILLION = 1e6;
  private static final OptionalDouble NOTHING = OptionalDouble.empty();

  private final ReportSettings settings;
  private final String line;
  private final Structure structure;
  private final CharacteristicTally tally;
  private final Characteristic characteristic;

  CharacteristicJudge(
      ReportSettings settings, String line, Structure structure, CharacteristicTally tally) {
    this.settings = settings;
    this.line = line;
    this.structure = structure;
    this.tally = tally;
    this.characteristic = tally.characteristic();
  }

  /**
   * Judges.
   *
   * @param before the week before, for the trend; without it there is neither trend nor chart
   */
  CharacteristicWeek week(SeriesWeeks series, Optional<CharacteristicWeek> before) {
    boolean isShare = characteristic.kind() == Characteristic.Kind.SHARE;
    Optional<SeriesWeeks.Week> charted =
        isShare ? Optional.empty() : Optional.of(series.week(characteristic));
    Steadiness steadiness =
        charted.map(SeriesWeeks.Week::steadiness).orElse(new Steadiness(0, 0, false));
    double lag1 = charted.map(SeriesWeeks.Week::lag1).orElse(0.0);
    OptionalDouble within =
        charted
            .map(found -> found.figures().sigmaWithin())
            .orElseGet(() -> tally.tally().sigmaWithin());
    SpecLimits average = isShare ? SpecLimits.NONE : structure.average(characteristic);
    CapabilityQuestion question = question(average, lag1, within);
    Stability stability = Steadfast.of(steadiness.judged(), steadiness.signalled());
    Optional<CapabilityStatement> statement =
        CapabilityStatement.of(tally.tally(), question, stability);
    Optional<LayerLook.Spread> spread = tally.spread().spread(tally.spec());
    IndexWeek index = index(statement, steadiness);
    List<LaneWeek> lanes = lanes();
    Moments points = tally.points();
    return new CharacteristicWeek(
        characteristic.kind(),
        characteristic.position(),
        characteristic.kind() == Characteristic.Kind.TOTAL ? "" : characteristic.name(),
        Bounds.of(tally.spec()),
        Bounds.of(average),
        tally.tally().samples(),
        points.count(),
        statement.map(found -> found.points().size().forVariance()).orElse(0.0),
        points.count() > 0 ? OptionalDouble.of(points.mean()) : NOTHING,
        within,
        points.standardDeviation(),
        lag1,
        steadiness,
        index,
        statement.map(found -> found.averages().indices().cpk()).orElse(NOTHING),
        worst(lanes),
        shape(spread.map(LayerLook.Spread::normality)),
        Bounds.of(tally.spec()).isEmpty() || points.count() == 0
            ? NOTHING
            : OptionalDouble.of(PER_MILLION * tally.outside() / points.count()),
        expected(statement, index),
        spread.map(found -> new Bins(found.start(), found.width(), found.counts())),
        before.isEmpty() ? List.of() : charted.map(SeriesWeeks.Week::chart).orElse(List.of()),
        lanes,
        statement.map(CapabilityStatement::laneShare).orElse(0.0),
        statement.flatMap(
            found -> new ResinWeek(settings, line, structure, tally).giveaway(found, index)),
        isShare ? List.of() : trend(series, before, index, steadiness));
  }

  private CapabilityQuestion question(SpecLimits average, double lag1, OptionalDouble within) {
    CapabilityQuestion question =
        CapabilityQuestion.of(average, tally.spec())
            .requiring(settings.asked().index(), settings.asked().confidence())
            .withLag1(lag1);
    return within.isPresent() && within.getAsDouble() > 0
        ? question.withSigmaWithinUm(within.getAsDouble())
        : question;
  }

  private IndexWeek index(Optional<CapabilityStatement> statement, Steadiness steadiness) {
    if (statement.isEmpty()) {
      return IndexWeek.none(Why.NO_DATA);
    }
    Answer points = statement.get().points();
    if (points.indices().cpk().isEmpty()) {
      return IndexWeek.none(Bounds.of(tally.spec()).isEmpty() ? Why.NO_SPECIFICATION : Why.TOO_FEW);
    }
    Why why = why(statement.get(), steadiness);
    Kind kind = why == Why.STABLE ? Kind.CAPABILITY : Kind.PERFORMANCE;
    Optional<Indices> within =
        kind == Kind.CAPABILITY ? statement.get().capability() : Optional.empty();
    Optional<PercentileIndices> percentiles = statement.get().percentiles();
    Optional<IndexLimits> limits = percentiles.isPresent() ? Optional.empty() : points.limits();
    return new IndexWeek(
        kind,
        why,
        percentiles.isPresent() ? Method.PERCENTILES : Method.NORMAL,
        within.map(Indices::cp).orElse(NOTHING),
        within.map(Indices::cpk).orElse(NOTHING),
        percentiles.map(PercentileIndices::pp).orElse(points.indices().cp()),
        percentiles.map(PercentileIndices::ppk).orElse(points.indices().cpk()),
        number(limits.map(IndexLimits::atLeast)),
        number(limits.map(IndexLimits::from)),
        number(limits.map(IndexLimits::to)),
        why == Why.TOO_FEW ? Standing.NOT_JUDGED : standing(points));
  }

  private static Why why(CapabilityStatement statement, Steadiness steadiness) {
    boolean tooFew = statement.warning().filter(SampleSizeWarning.TOO_FEW::equals).isPresent();
    if (tooFew) {
      return Why.TOO_FEW;
    }
    if (steadiness.judged() == 0) {
      return Why.NO_LIMITS;
    }
    return steadiness.stable() ? Why.STABLE : Why.UNSTABLE;
  }

  private static Standing standing(Answer points) {
    return switch (points.standing()) {
      case SHOWN -> Standing.SHOWN;
      case NOT_SHOWN -> Standing.NOT_SHOWN;
      case BELOW -> Standing.BELOW;
      case NOT_JUDGED -> Standing.NOT_JUDGED;
    };
  }

  /** A fraction that is expected says what comes next, which a steady process alone allows. */
  private static OptionalDouble expected(Optional<CapabilityStatement> statement, IndexWeek index) {
    return index.kind() == Kind.CAPABILITY && index.method() == Method.NORMAL
        ? statement.map(found -> found.points().indices().ppmTotal()).orElse(NOTHING)
        : NOTHING;
  }

  private List<LaneWeek> lanes() {
    List<LaneWeek> lanes = new ArrayList<>();
    tally
        .lanes()
        .forEach(
            (lane, moments) -> {
              OptionalDouble sigma = moments.standardDeviation();
              OptionalDouble ppk =
                  sigma.isPresent() && sigma.getAsDouble() > 0
                      ? Indices.of(moments.mean(), sigma.getAsDouble(), tally.spec()).cpk()
                      : NOTHING;
              lanes.add(new LaneWeek(lane, moments.count(), moments.mean(), sigma, ppk));
            });
    return lanes;
  }

  private static Optional<LaneWeek> worst(List<LaneWeek> lanes) {
    return lanes.stream()
        .filter(lane -> lane.ppk().isPresent())
        .min(Comparator.comparingDouble(lane -> lane.ppk().getAsDouble()));
  }

  private static Shape shape(Optional<NormalityGate> gate) {
    return gate.map(
            found ->
                new Shape(
                    found.verdict().name().toLowerCase(Locale.ROOT),
                    number(found.test().map(test -> test.p())),
                    number(found.shape().map(shape -> shape.skewness())),
                    number(found.shape().map(shape -> shape.excessKurtosis()))))
        .orElse(new Shape("not_judged", NOTHING, NOTHING, NOTHING));
  }

  private List<TrendWeek> trend(
      SeriesWeeks series,
      Optional<CharacteristicWeek> before,
      IndexWeek index,
      Steadiness steadiness) {
    if (before.isEmpty()) {
      return List.of();
    }
    List<TrendWeek> trend =
        new ArrayList<>(series.before(characteristic, WeekReader.TREND - 1, settings));
    trend.add(before.get().asTrend(series.wordBefore()));
    Moments points = tally.points();
    trend.add(
        new TrendWeek(
            series.word(),
            tally.tally().samples(),
            points.count() > 0 ? OptionalDouble.of(points.mean()) : NOTHING,
            points.standardDeviation(),
            index.trusted(index.ppk()),
            index.trusted(index.atLeast()),
            steadiness.judged() > 0 && steadiness.stable()));
    return trend;
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : NOTHING;
  }
}
