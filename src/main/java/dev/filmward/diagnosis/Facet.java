package dev.filmward.diagnosis;

import java.util.Locale;

/** A side from which a film's history is looked at. */
public enum Facet {
  /** A mean that stepped or drifts, of one layer or of several. */
  LEVEL("level"),
  /** A few samples off, then back as before. */
  SHORT("short disturbance"),
  /** Up and down at an even pace. */
  PERIODIC("periodic"),
  /** A wave of 24 hours. */
  DAILY("daily wave"),
  /** Lanes apart from each other as they did not use to be. */
  LANES("across the web"),
  /** Readings that scatter more than they used to, or scatter together. */
  SCATTER("scatter"),
  /** Readings that are missing, repeated or flagged. */
  READINGS("readings");

  private final String words;

  Facet(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** As written in files and addresses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
