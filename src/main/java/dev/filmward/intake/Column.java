package dev.filmward.intake;

import dev.filmward.film.LengthUnit;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One column of a readings file. Immutable.
 *
 * @param number from 1, as it stands in the file
 * @param heading as it stands in the file, trimmed
 * @param unit of a thickness
 * @param position of the layer whose thickness it holds, where the heading gives a position
 * @param layer whose thickness it holds, where the heading gives a name
 */
public record Column(
    int number,
    String heading,
    Field field,
    Optional<LengthUnit> unit,
    OptionalInt position,
    Optional<String> layer) {

  public Column {
    if (!(number >= 1)) {
      throw new IllegalArgumentException("columns count from 1, not " + number);
    }
  }
}
