package dev.filmward.store;

import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.gauge.screen.ScreeningRules;
import java.time.Instant;

/**
 * How readings are screened from a moment on, as a person decided. Immutable.
 *
 * @param version from 1
 */
public record ScreeningVersion(
    int version, ScreeningRules rules, Instant holdsFrom, Decision decision) {}
