package dev.filmward.pipeline;

import java.time.LocalDate;

/**
 * How many readings of a lane were not measured on a day.
 *
 * @param places readings that could have been measured
 * @param missing of these
 */
public record MissingShare(LocalDate day, int lane, long places, long missing) {}
