package dev.filmward.report;

/**
 * A figure that differs between two reports.
 *
 * @param figure such as ppk, mean, samples, verdict
 * @param before as text with full digits; empty where it was not there
 */
public record ReportChange(
    String line,
    String structure,
    String characteristic,
    String figure,
    String before,
    String after) {}
