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
import dev.filmward.film.Structure;
import dev.filmward.pipeline.LayerLook;
import dev.filmward.report.CharacteristicWeek.Bins;
import dev.filmward.report.CharacteristicWeek.EarlierSpec;
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
  private final CharacteristicParts parts;
  private final CharacteristicTally tally;
  private final Characteristic characteristic;

  CharacteristicJudge(
      ReportSettings settings, String line, Structure structure, CharacteristicParts parts) {
    this.settings = settings;
    this.line = line;
    this.structure = structure;
    this.parts = parts;
    this.tally = parts.last();
    this.characteristic = parts.characteristic();
  }

  /** What is said of readings of which the same was asked. */
  private record Judged(
      Steadiness steadiness,
      double lag1,
      OptionalDouble within,
      Optional<CapabilityStatement> statement,
      IndexWeek index) {}

  /**
   * Judges.
   *
   * @param before the week before, for the trend; without it there is neither trend nor chart
   */
  CharacteristicWeek week(SeriesWeeks series, Optional<CharacteristicWeek> before) {
    boolean isShare = characteristic.kind() == Characteristic.Kind.SHARE;
    Optional<SeriesWeeks.Week> charted =
        isShare ? Optional.empty() : Optional.of(series.week(characteristic));
    Judged judged = judged(tally, charted);
    Optional<CapabilityStatement> statement = judged.statement;
    Optional<LayerLook.Spread> spread = tally.spread().spread();
    List<LaneWeek> lanes = lanes();
    Moments points = tally.points();
    List<EarlierSpec> earlier =
        parts.earlier().stream().map(part -> earlier(part, judged(part, charted))).toList();
    return new CharacteristicWeek(
        characteristic.kind(),
        characteristic.position(),
        characteristic.kind() == Characteristic.Kind.TOTAL ? "" : characteristic.name(),
        Bounds.of(tally.spec()),
        Bounds.of(tally.asked().average()),
        tally.tally().samples(),
        points.count(),
        statement.map(found -> found.points().size().forVariance()).orElse(0.0),
        mean(tally),
        judged.within,
        points.standardDeviation(),
        judged.lag1,
        judged.steadiness,
        judged.index,
        statement.map(found -> found.averages().indices().cpk()).orElse(NOTHING),
        worst(lanes),
        shape(spread.map(LayerLook.Spread::normality)),
        observedPpm(tally),
        expected(statement, judged.index),
        spread.map(found -> new Bins(found.start(), found.width(), found.counts())),
        before.isEmpty() ? List.of() : charted.map(SeriesWeeks.Week::chart).orElse(List.of()),
        lanes,
        statement.map(CapabilityStatement::laneShare).orElse(0.0),
        statement.flatMap(
            found -> new ResinWeek(settings, line, structure, parts).giveaway(found, judged.index)),
        isShare ? List.of() : trend(series, before, judged.index, judged.steadiness),
        earlier.isEmpty() ? Optional.empty() : tally.asked().from(),
        earlier);
  }

  private Judged judged(CharacteristicTally part, Optional<SeriesWeeks.Week> charted) {
    Optional<SeriesWeeks.Part> figures =
        charted.map(week -> week.part(moment -> parts.holds(part, moment)));
    Steadiness steadiness =
        figures.map(SeriesWeeks.Part::steadiness).orElse(new Steadiness(0, 0, false));
    double lag1 = figures.map(SeriesWeeks.Part::lag1).orElse(0.0);
    OptionalDouble within =
        figures
            .map(found -> found.figures().sigmaWithin())
            .orElseGet(() -> part.tally().sigmaWithin());
    Stability stability = Steadfast.of(steadiness.judged(), steadiness.signalled());
    Optional<CapabilityStatement> statement =
        CapabilityStatement.of(part.tally(), question(part, lag1, within), stability);
    return new Judged(steadiness, lag1, within, statement, index(part, statement, steadiness));
  }

  private static EarlierSpec earlier(CharacteristicTally part, Judged judged) {
    return new EarlierSpec(
        part.asked().from(),
        Bounds.of(part.spec()),
        Bounds.of(part.asked().average()),
        part.tally().samples(),
        part.points().count(),
        mean(part),
        part.points().standardDeviation(),
        judged.steadiness,
        judged.index,
        observedPpm(part));
  }

  private static OptionalDouble mean(CharacteristicTally part) {
    Moments points = part.points();
    return points.count() > 0 ? OptionalDouble.of(points.mean()) : NOTHING;
  }

  private static OptionalDouble observedPpm(CharacteristicTally part) {
    long readings = part.points().count();
    return Bounds.of(part.spec()).isEmpty() || readings == 0
        ? NOTHING
        : OptionalDouble.of(PER_MILLION * part.outside() / readings);
  }

  private CapabilityQuestion question(
      CharacteristicTally part, double lag1, OptionalDouble within) {
    CapabilityQuestion question =
        CapabilityQuestion.of(part.asked().average(), part.spec())
            .requiring(settings.asked().index(), settings.asked().confidence())
            .withLag1(lag1);
    return within.isPresent() && within.getAsDouble() > 0
        ? question.withSigmaWithinUm(within.getAsDouble())
        : question;
  }

  private static IndexWeek index(
      CharacteristicTally part, Optional<CapabilityStatement> statement, Steadiness steadiness) {
    if (statement.isEmpty()) {
      return IndexWeek.none(Why.NO_DATA);
    }
    Answer points = statement.get().points();
    if (points.indices().cpk().isEmpty()) {
      return IndexWeek.none(Bounds.of(part.spec()).isEmpty() ? Why.NO_SPECIFICATION : Why.TOO_FEW);
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
    trend.add(
        new TrendWeek(
            series.word(),
            tally.tally().samples(),
            mean(tally),
            tally.points().standardDeviation(),
            index.trusted(index.ppk()),
            index.trusted(index.atLeast()),
            steadiness.judged() > 0 && steadiness.stable(),
            Optional.of(Bounds.of(tally.spec()))));
    return trend;
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : NOTHING;
  }
}
