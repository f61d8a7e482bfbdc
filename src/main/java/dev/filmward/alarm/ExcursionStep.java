package dev.filmward.alarm;

import dev.filmward.film.Characteristic;
import java.util.List;
import java.util.Optional;

/**
 * What a sample did to an excursion.
 *
 * @param before as it was; empty where the sample opened it
 * @param signalling members that signalled at this sample
 */
public record ExcursionStep(
    Optional<Excursion> before, Excursion now, List<Characteristic> signalling) {
  public ExcursionStep {
    signalling = List.copyOf(signalling);
  }
}
