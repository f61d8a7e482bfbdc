package dev.filmward.intake.recognition;

import dev.filmward.intake.Field;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A mapping on its way, in the texts of its file; {@code ?} for what is not known. Immutable.
 *
 * @param time pattern, zone and rule for times that occur twice
 */
record Draft(
    String name,
    TableShape shape,
    NumberGuess numbers,
    Map<Field, Place> places,
    Time time,
    List<Value> values,
    Optional<String> nameForm) {

  /** How times are written. */
  record Time(String pattern, String zone, String reason) {}

  /** A column of thicknesses. */
  record Value(String column, String unit, Optional<String> layer, String lane, String reason) {}

  Set<String> missing() {
    return numbers.missing();
  }
}
