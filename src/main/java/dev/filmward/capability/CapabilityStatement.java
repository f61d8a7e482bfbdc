package dev.filmward.capability;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a week's film of one characteristic says about capability, as answers to three questions
 * that are never mixed: sample averages against the average specification, single points against
 * the individual one, and the worst lane, since a slit roll comes from one lane. Each is judged by
 * Ppk, with the spread of all that was measured, and by its lower confidence limit.
 *
 * <p>Only a stable process has a capability (Cp, Cpk, from the spread within samples); while it is
 * not, performance is all there is. Points that are not normal are not shown to be good by limits
 * that assume it; where percentiles can be had, theirs counts too. Immutable.
 *
 * <p>Source: ISO 22514-1 and 22514-2 for capability and performance.
 *
 * @param worstLane empty where no lane has an index
 * @param capability Cp and Cpk of points; empty while the process is not stable
 * @param warning of too few readings, counted as what they are worth
 * @param normality empty where readings were not kept
 * @param percentiles where points are not normal and percentiles can be had
 * @param laneShare part of steady lane differences in all variation, 0 to 1
 */
public record CapabilityStatement(
    Stability stability,
    Answer averages,
    Answer points,
    Optional<Answer> worstLane,
    Optional<Indices> capability,
    Optional<SampleSizeWarning> warning,
    Optional<NormalityGate> normality,
    Optional<PercentileIndices> percentiles,
    double laneShare) {

  /** Empty where nothing was measured. */
  public static Optional<CapabilityStatement> of(
      CapabilityTally tally, CapabilityQuestion question, Stability stability) {
    return tally.samples() == 0
        ? Optional.empty()
        : Optional.of(new Judge(tally, question).statement(stability));
  }

  /** All answers there are. */
  List<Answer> answers() {
    List<Answer> answers = new ArrayList<>(List.of(averages, points));
    worstLane.ifPresent(answers::add);
    return answers;
  }

  /** Stability first, then the three answers, then what to bear in mind. */
  public List<String> words() {
    List<String> words = new ArrayList<>();
    words.add(stability.words());
    words.add(averages.words());
    words.add(points.words());
    worstLane.ifPresent(lane -> words.add(lane.words()));
    percentiles.ifPresent(found -> words.add(found.words()));
    normality.ifPresent(gate -> words.add("Single points: " + gate.words() + "."));
    warning.ifPresent(found -> words.add("Readings: " + found.words() + "."));
    return words;
  }
}
