package dev.filmward.store;

/** A row that could not be used, or a reading of it: where, what, why, and the row as it came. */
public record QuarantinedRow(
    long line, String column, String value, String reason, String raw, int readings) {}
