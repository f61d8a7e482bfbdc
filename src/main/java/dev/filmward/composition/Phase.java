package dev.filmward.composition;

/** Whether a point helped to make the limits that it is held against. */
public enum Phase {
  /** The point is of the baseline (Phase I). */
  BASELINE,
  /** The point came later (Phase II). */
  MONITORING
}
