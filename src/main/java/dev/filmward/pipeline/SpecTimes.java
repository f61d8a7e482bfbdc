package dev.filmward.pipeline;

import dev.filmward.film.SpecLimits;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What was asked of a characteristic, in the order of time; only where it changed. Immutable.
 *
 * @param all the first holds for all that was made before the second
 */
public record SpecTimes(List<Spec> all) {
  public SpecTimes {
    all = List.copyOf(all);
    if (all.isEmpty()) {
      throw new IllegalArgumentException("something is asked at every time, be it nothing");
    }
  }

  /**
   * What was asked since a moment.
   *
   * @param from empty where it holds for all that was made before the next
   * @param individual limits for single readings
   * @param average limits for the mean of a sample
   */
  public record Spec(Optional<Instant> from, SpecLimits individual, SpecLimits average) {
    boolean asksAs(Spec other) {
      return individual.equals(other.individual) && average.equals(other.average);
    }
  }

  /** Of a characteristic of which nothing is asked. */
  public static SpecTimes none() {
    return new SpecTimes(List.of(new Spec(Optional.empty(), SpecLimits.NONE, SpecLimits.NONE)));
  }

  /** The place in {@link #all} of what was asked at a moment. */
  public int indexAt(Instant moment) {
    int found = 0;
    for (int i = 1; i < all.size(); i++) {
      if (!all.get(i).from().orElse(Instant.MIN).isAfter(moment)) {
        found = i;
      }
    }
    return found;
  }
}
