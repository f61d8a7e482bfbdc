package dev.filmward.gauge.conformity;

/** What may be said of one value, in four zones (ILAC-G8:09/2019, non-binary statements). */
public enum Zone {
  /** Inside, with the guard band to spare. */
  PASS("pass"),
  /** Inside the specification, within the guard band of its limit. */
  CONDITIONAL_PASS("conditional pass"),
  /** Outside the specification, by no more than the guard band. */
  CONDITIONAL_FAIL("conditional fail"),
  /** Outside by more than that. */
  FAIL("fail");

  private final String words;

  Zone(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
