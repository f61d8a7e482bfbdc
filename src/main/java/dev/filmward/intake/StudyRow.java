package dev.filmward.intake;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A reading of a gauge study as a file has it. Immutable.
 *
 * @param line where it stands
 * @param layer position or name; empty where the file has no such column
 * @param um above 0, finite
 * @param referenceUm what the part is known to measure, above 0; empty where the file does not say
 */
public record StudyRow(
    long line,
    String part,
    String operator,
    String trial,
    Optional<String> layer,
    double um,
    OptionalDouble referenceUm) {}
