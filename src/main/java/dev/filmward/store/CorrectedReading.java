package dev.filmward.store;

import dev.filmward.film.SampleKey;
import dev.filmward.store.FileEntry.Sender;
import java.time.Instant;

/**
 * A reading that took the place of another one. Immutable.
 *
 * @param oldUm and {@code newUm}: for a temperature, degrees Celsius
 */
public record CorrectedReading(
    SampleKey sample,
    Place place,
    double oldUm,
    double newUm,
    Sender sender,
    Instant at,
    ByFile file) {

  /** Whether it is the temperature of the film that was another one. */
  public boolean isOfTemperature() {
    return place.layer() == SampleTable.Correction.OF_TEMPERATURE;
  }

  /** Where in the sample: the reported layer, from 1, or 0 for the temperature; and the lane. */
  public record Place(int layer, int lane) {}

  /** The file that brought it. */
  public record ByFile(long id, String name) {}
}
