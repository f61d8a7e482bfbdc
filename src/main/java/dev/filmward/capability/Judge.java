package dev.filmward.capability;

import dev.filmward.stats.Moments;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Takes a tally with at least one reading and a question, gives the statement. */
final class Judge {
  private final CapabilityTally tally;
  private final CapabilityQuestion question;
  private final double[] readings;

  Judge(CapabilityTally tally, CapabilityQuestion question) {
    this.tally = tally;
    this.question = question;
    readings = tally.readings();
  }

  CapabilityStatement statement(Stability stability) {
    VarianceParts parts = tally.parts();
    EffectiveSize size = parts.effectiveSize(question.lag1());
    Optional<NormalityGate> normality =
        Optional.of(readings).filter(kept -> kept.length > 0).map(NormalityGate::of);
    Optional<PercentileIndices> percentiles =
        isNotNormal(normality)
            ? PercentileIndices.of(readings, question.individual())
            : Optional.empty();
    return new CapabilityStatement(
        stability,
        unlessUnstable(averages(), stability),
        unlessUnstable(points(size, isNotNormal(normality), percentiles), stability),
        worstLane().map(lane -> unlessUnstable(lane, stability)),
        stability.isStable() ? capability() : Optional.empty(),
        SampleSizeWarning.of((long) size.forVariance()),
        normality,
        percentiles,
        parts.laneShare());
  }

  /** What an unstable process made shows nothing of what it will make. */
  private static Answer unlessUnstable(Answer answer, Stability stability) {
    return answer.standing() == Standing.SHOWN && !stability.isStable()
        ? answer.standing(Standing.NOT_SHOWN, "the process is not stable")
        : answer;
  }

  private Answer averages() {
    EffectiveSize size = EffectiveSize.of(tally.samples(), question.lag1());
    return Answer.of("Sample averages", tally.averages(), question.average(), size, question);
  }

  private Answer points(
      EffectiveSize size, boolean notNormal, Optional<PercentileIndices> percentiles) {
    Answer answer =
        Answer.of("Single points", tally.points(), question.individual(), size, question);
    double byPercentiles =
        percentiles.map(PercentileIndices::ppk).orElse(OptionalDouble.empty()).orElse(Double.NaN);
    if (answer.standing() == Standing.NOT_JUDGED || !notNormal) {
      return answer;
    }
    if (byPercentiles < question.requirement()) {
      return answer.standing(
          Standing.BELOW, "the points are not normal and their percentiles say so");
    }
    return answer.standing() == Standing.SHOWN
        ? answer.standing(
            Standing.NOT_SHOWN, "the points are not normal and the confidence assumes it")
        : answer;
  }

  private static boolean isNotNormal(Optional<NormalityGate> normality) {
    return normality.isPresent() && normality.get().verdict() == Normality.NOT_NORMAL;
  }

  /** By the estimate; a lane without an index cannot be compared. */
  private Optional<Answer> worstLane() {
    return tally.lanes().entrySet().stream()
        .map(this::lane)
        .filter(answer -> answer.indices().cpk().isPresent())
        .min(Comparator.comparingDouble(answer -> answer.indices().cpk().getAsDouble()));
  }

  private Answer lane(Map.Entry<Integer, Moments> lane) {
    EffectiveSize size = EffectiveSize.of(lane.getValue().count(), question.lag1());
    return Answer.of(
        "Worst lane, number " + lane.getKey(),
        lane.getValue(),
        question.individual(),
        size,
        question);
  }

  private Optional<Indices> capability() {
    OptionalDouble sigma =
        question.sigmaWithinUm().isPresent() ? question.sigmaWithinUm() : tally.sigmaWithin();
    return sigma.isPresent()
        ? Optional.of(Indices.of(tally.points().mean(), sigma.getAsDouble(), question.individual()))
        : Optional.empty();
  }
}
