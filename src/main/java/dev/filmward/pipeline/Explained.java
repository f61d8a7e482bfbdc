package dev.filmward.pipeline;

import dev.filmward.diagnosis.Diagnosis;
import dev.filmward.film.Structure;
import dev.filmward.store.FigureTable.Span;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A diagnosis with what it was made from.
 *
 * @param window first to last sample that was looked at
 * @param samples how many there were
 * @param reference the version of limits whose baseline says how the layers usually are; empty
 *     where the window's first part does
 * @param sides before and after the clearest change; empty where nothing changed
 */
public record Explained(
    Structure structure,
    Span window,
    int samples,
    OptionalInt reference,
    Diagnosis diagnosis,
    Optional<BeforeAfter> sides) {}
