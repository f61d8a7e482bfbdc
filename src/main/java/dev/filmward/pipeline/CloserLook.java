package dev.filmward.pipeline;

import dev.filmward.capability.CapabilityQuestion;
import dev.filmward.capability.CapabilityTally;
import dev.filmward.capability.LaneValues;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.pipeline.Analysis.PointSignal;
import dev.filmward.variation.WebComponents;
import dev.filmward.variation.WebVariation;
import java.util.List;
import java.util.Optional;

/** Gathers, sample by sample, what a {@link SeriesDetail} needs of one series. For one thread. */
final class CloserLook {
  private final Characteristic characteristic;
  private final CapabilityQuestion question;
  private final CapabilityTally tally = CapabilityTally.keepingReadings();
  private Optional<WebVariation> web = Optional.empty();
  private int lanes;

  CloserLook(Characteristic characteristic, CapabilityQuestion question) {
    this.characteristic = characteristic;
    this.question = question;
  }

  /** Samples with other lanes than the first one tell nothing of the web as a whole. */
  void add(Sample sample) {
    tally.add(sample, characteristic);
    double[] readings = LaneValues.of(sample, characteristic);
    if (web.isEmpty() && readings.length > 1) {
      lanes = readings.length;
      web = Optional.of(new WebVariation(lanes, question.individual().target().orElse(0)));
    }
    if (readings.length == lanes) {
      web.ifPresent(variation -> variation.add(readings));
    }
  }

  SeriesDetail detail(
      SubgroupColumn subgroups, SeriesDetail.Times times, List<PointSignal> signals) {
    Optional<WebComponents> components = web.flatMap(WebVariation::components);
    return SeriesDetail.of(tally, question, subgroups, times, signals, components);
  }
}
