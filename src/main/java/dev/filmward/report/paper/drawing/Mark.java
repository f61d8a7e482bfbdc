package dev.filmward.report.paper.drawing;

/** A written place on an axis. */
public record Mark(double value, String text) {}
