package dev.filmward.store;

import dev.filmward.film.SampleKey;
import dev.filmward.subgroup.Subgroup;
import java.time.Instant;
import java.util.Optional;

/**
 * One characteristic of one sample, as it is charted.
 *
 * @param subgroup empty where the characteristic was measured nowhere in the sample
 */
public record FigureRow(
    long sampleId, SampleKey key, Instant takenAt, long fileId, Optional<Subgroup> subgroup) {}
