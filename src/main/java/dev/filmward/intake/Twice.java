package dev.filmward.intake;

/** What is done with a local time that occurs twice, where clocks are put back. */
public enum Twice {
  EARLIER("the earlier of the two was taken"),
  LATER("the later of the two was taken"),
  /** The earliest that is not before the row above; for files in order of time. */
  ORDER("the order of the rows told which one was meant"),
  REFUSE("such rows are in quarantine");

  private final String words;

  Twice(String words) {
    this.words = words;
  }

  /** What was done, in words. */
  public String words() {
    return words;
  }
}
