package dev.filmward.report;

/**
 * What a week says of one film on one line; the worst that is true of any of its characteristics.
 */
public enum Verdict {
  /** Stable, and shown to keep the index that is asked for. */
  CAPABLE,
  /** Stable and above the index, but its lower confidence limit is not. */
  NOT_SHOWN,
  /** Ppk is below the index that is asked for. */
  BELOW,
  /** Signals beyond chance: performance only. */
  NOT_STABLE,
  /** No limits were in force, so stability was not judged. */
  NOT_JUDGED,
  TOO_LITTLE_DATA,
  NO_SPECIFICATION,
  NO_DATA
}
