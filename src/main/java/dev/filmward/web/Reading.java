package dev.filmward.web;

/** Who may look at lines, charts and alarms. */
public enum Reading {
  SIGNED_IN,
  /** Everybody who reaches the server; common practice for boards on a shop floor. */
  OPEN
}
