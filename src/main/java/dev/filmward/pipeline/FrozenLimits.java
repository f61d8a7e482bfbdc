package dev.filmward.pipeline;

import java.time.Instant;

/**
 * What came of freezing limits.
 *
 * @param version the new version
 * @param characteristics how many have it
 * @param holdsFrom the time from which it holds
 */
public record FrozenLimits(int version, int characteristics, Instant holdsFrom) {}
