package dev.filmward.intake;

import dev.filmward.film.LengthUnit;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A column of thicknesses, and whose they are. Immutable.
 *
 * @param column its heading, or {@code #} and its number
 * @param unit empty where every cell carries its own
 * @param layer name or position; empty where a column of the file says it
 * @param lane empty where a column of the file says it
 */
public record ValueColumn(
    String column, Optional<LengthUnit> unit, Optional<String> layer, OptionalInt lane) {}
