package dev.filmward.intake;

import java.util.Optional;

/**
 * A reading of a gauge study as a file has it. Immutable.
 *
 * @param line where it stands
 * @param layer position or name; empty where the file has no such column
 * @param um above 0, finite
 */
public record StudyRow(
    long line, String part, String operator, String trial, Optional<String> layer, double um) {}
