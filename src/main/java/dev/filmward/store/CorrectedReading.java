package dev.filmward.store;

import dev.filmward.film.SampleKey;
import dev.filmward.store.FileEntry.Sender;
import java.time.Instant;

/** A reading that took the place of another one. Immutable. */
public record CorrectedReading(
    SampleKey sample,
    Place place,
    double oldUm,
    double newUm,
    Sender sender,
    Instant at,
    ByFile file) {

  /** Where in the sample: the reported layer, from 1, and the lane. */
  public record Place(int layer, int lane) {}

  /** The file that brought it. */
  public record ByFile(long id, String name) {}
}
