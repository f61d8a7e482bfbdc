package dev.filmward.simulate;

/**
 * What is in a file of readings: rows x (1, or the number of layers in the wide layout) = readings
 * + missing + quarantined.
 */
record Counts(long rows, long readings, long missing, long quarantined) {}
