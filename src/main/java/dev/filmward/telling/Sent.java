package dev.filmward.telling;

/** What became of an attempt to send a message, with what the other side said, in words. */
public record Sent(Outcome outcome, String words) {

  /** Whether to try again, and what that means for other messages the same way. */
  public enum Outcome {
    /** The other side took it. */
    TAKEN,
    /** The other side did not want this message; another one may go. */
    REFUSED,
    /** No way there just now, for any message. */
    NO_WAY
  }

  static Sent taken(String words) {
    return new Sent(Outcome.TAKEN, Plain.line(words, 500));
  }

  static Sent refused(String words) {
    return new Sent(Outcome.REFUSED, Plain.line(words, 500));
  }

  static Sent noWay(String words) {
    return new Sent(Outcome.NO_WAY, Plain.line(words, 500));
  }

  public boolean isTaken() {
    return outcome == Outcome.TAKEN;
  }
}
