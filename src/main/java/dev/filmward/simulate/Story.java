package dev.filmward.simulate;

import dev.filmward.film.Sample;
import java.util.List;
import java.util.stream.Stream;

/**
 * What a line makes, when, and what happens to it: enough to make every sample. Immutable.
 *
 * @param seed the same story with the same seed gives the same samples
 */
record Story(FilmModel film, Schedule schedule, long seed, List<Event> events) {

  Story {
    events = List.copyOf(events);
  }

  Story withSeed(long other) {
    return new Story(film, schedule, other, events);
  }

  List<Sample> samples(int count) {
    return Stream.generate(new SimulatedGauge(this)::next).limit(count).toList();
  }

  double factor(int sample, int position, int lane) {
    double factor = 1;
    for (Event event : events) {
      factor *= event.factor(sample, position, lane);
    }
    return factor;
  }

  double missing(int sample, int position, int lane) {
    double chance = film.stability().missing();
    for (Event event : events) {
      chance += event.missing(sample, position, lane);
    }
    return chance;
  }
}
