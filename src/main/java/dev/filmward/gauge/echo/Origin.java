package dev.filmward.gauge.echo;

/** Where a velocity or a density comes from. */
public enum Origin {
  STRUCTURE("from the structure"),
  STARTING_VALUE("starting value, calibrate"),
  UNKNOWN("not known");

  private final String words;

  Origin(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
