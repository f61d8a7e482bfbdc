package dev.filmward.intake.recognition;

import dev.filmward.intake.Source;
import java.util.List;
import java.util.Map;

/**
 * Where a field comes from, as proposed, and why; {@code ?} for what is not known. Immutable.
 *
 * @param kind as in {@link Source}
 */
record Place(Source.Kind kind, List<String> names, Map<String, String> values, String reason) {
  static final String UNKNOWN = "?";

  static Place of(Source.Kind kind, List<String> names, String reason) {
    return new Place(kind, names, Map.of(), reason);
  }

  static Place unknown(String reason) {
    return of(Source.Kind.CONSTANT, List.of(UNKNOWN), reason);
  }

  Place with(Map<String, String> meanings) {
    return new Place(kind, names, meanings, reason);
  }
}
