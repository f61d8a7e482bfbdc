package dev.filmward.telling;

/** A password: never written to a log, an answer or the audit chain by accident. */
public final class Secret {
  private static final int LONGEST = 500;

  private final String value;

  public Secret(String value) {
    if (value.isEmpty() || value.length() > LONGEST) {
      throw new IllegalArgumentException("a password has 1 to 500 characters");
    }
    this.value = value;
  }

  /** For whoever must prove to know it, and for the table that keeps it. */
  public String reveal() {
    return value;
  }

  @Override
  public String toString() {
    return "(secret)";
  }
}
