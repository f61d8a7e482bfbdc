package dev.filmward.pipeline;

import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import dev.filmward.gauge.screen.Flag;
import dev.filmward.gauge.screen.Misread;
import dev.filmward.gauge.screen.RecentSamples;
import dev.filmward.gauge.screen.Screen;
import dev.filmward.gauge.screen.ScreeningRules;
import dev.filmward.gauge.screen.ScreeningState;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.BiConsumer;

/**
 * Screens samples of files as a plant would by default that got the same readings: holds back what
 * it would hold out. Keeps all readings in memory. For one thread.
 */
final class BatchScreening {
  private final Structures structures;
  private final Map<List<String>, List<Sample>> made = new LinkedHashMap<>();
  private final Map<Misread, Integer> heldOut = new TreeMap<>();

  BatchScreening(Structures structures) {
    this.structures = structures;
  }

  void add(Sample sample, Structure structure) {
    made.computeIfAbsent(
            List.of(sample.key().line(), structure.code()), production -> new ArrayList<>())
        .add(sample);
  }

  /** Gives the samples that are charted to a receiver, in time order. */
  void forEachCharted(BiConsumer<Sample, Structure> receiver) {
    made.forEach(
        (production, samples) ->
            structures
                .find(production.get(1))
                .ifPresent(structure -> screen(samples, structure, receiver)));
  }

  private void screen(
      List<Sample> samples, Structure structure, BiConsumer<Sample, Structure> receiver) {
    samples.sort(Screening.IN_TIME);
    Screen screen = new Screen(structure, structures.all());
    RecentSamples recent = screen.recent();
    for (Sample sample : samples) {
      List<Flag> flags = screen.flags(sample, recent, OptionalDouble.empty());
      recent.add(sample, RecentSamples.Standing.BY_RULE);
      if (ScreeningRules.USUAL.state(flags).equals(Optional.of(ScreeningState.HELD_OUT))) {
        flags.stream()
            .filter(Flag::isReasonToHoldOut)
            .findFirst()
            .ifPresent(flag -> heldOut.merge(flag.kind(), 1, Integer::sum));
      } else {
        receiver.accept(sample, structure);
      }
    }
  }

  /** How many samples were held back, by the first reason of each. */
  Map<Misread, Integer> heldOut() {
    return heldOut;
  }
}
