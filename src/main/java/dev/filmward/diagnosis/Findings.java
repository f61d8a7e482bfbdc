package dev.filmward.diagnosis;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What all looks at a history came to. Mutable, for one thread. */
final class Findings {
  private final Map<Statistic, Finding> values = new EnumMap<>(Statistic.class);
  private final Map<Facet, Since> since = new EnumMap<>(Facet.class);
  private final List<Observation> observations = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  void put(Statistic statistic, double value) {
    put(statistic, value, List.of(), List.of());
  }

  void put(Statistic statistic, double value, List<Integer> positions) {
    put(statistic, value, positions, List.of());
  }

  void put(Statistic statistic, double value, List<Integer> positions, List<Integer> lanes) {
    values.put(statistic, new Finding(value, positions, lanes));
  }

  void observed(Observation observation) {
    observations.add(observation);
    observation.since().ifPresent(moment -> since.put(observation.shape().facet(), moment));
  }

  void note(String words) {
    notes.add(words);
  }

  Optional<Finding> find(Statistic statistic) {
    return Optional.ofNullable(values.get(statistic));
  }

  double valueOr(Statistic statistic, double other) {
    Finding finding = values.get(statistic);
    return finding == null ? other : finding.value();
  }

  Optional<Since> since(Facet facet) {
    return Optional.ofNullable(since.get(facet));
  }

  List<Observation> observations() {
    return observations;
  }

  List<String> notes() {
    return notes;
  }
}
