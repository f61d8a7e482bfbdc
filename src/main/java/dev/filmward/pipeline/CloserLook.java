package dev.filmward.pipeline;

import dev.filmward.capability.CapabilityQuestion;
import dev.filmward.capability.CapabilityTally;
import dev.filmward.capability.LaneValues;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.pipeline.Analysis.PointSignal;
import dev.filmward.variation.WebComponents;
import dev.filmward.variation.WebVariation;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Gathers, sample by sample, what a {@link SeriesDetail} needs of one series. For one thread. */
final class CloserLook {
  private static final int SETS_OF_LANES = 8;

  private final Characteristic characteristic;
  private final CapabilityQuestion question;
  private final CapabilityTally tally = CapabilityTally.keepingReadings();
  private final Map<List<Integer>, WebVariation> webs = new LinkedHashMap<>();

  CloserLook(Characteristic characteristic, CapabilityQuestion question) {
    this.characteristic = characteristic;
    this.question = question;
  }

  /** Samples with different lanes tell nothing of one web; the first few sets are kept apart. */
  void add(Sample sample) {
    tally.add(sample, characteristic);
    double[] readings = LaneValues.of(sample, characteristic);
    List<Integer> lanes = new ArrayList<>();
    for (int lane = 0; lane < readings.length; lane++) {
      lanes.add(sample.lane(lane));
    }
    boolean isRoom = webs.size() < SETS_OF_LANES || webs.containsKey(lanes);
    if (readings.length > 1 && isRoom) {
      webs.computeIfAbsent(lanes, unseen -> new WebVariation(lanes.size(), origin())).add(readings);
    }
  }

  private double origin() {
    return question.individual().target().orElse(0);
  }

  SeriesDetail detail(
      SubgroupColumn subgroups, SeriesDetail.Times times, List<PointSignal> signals) {
    Optional<WebComponents> components =
        webs.values().stream()
            .map(WebVariation::components)
            .flatMap(Optional::stream)
            .max(Comparator.comparingLong(WebComponents::samples));
    return SeriesDetail.of(tally, question, subgroups, times, signals, components);
  }
}
