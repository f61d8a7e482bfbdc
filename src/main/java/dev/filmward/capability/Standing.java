package dev.filmward.capability;

/** Where an index stands against what is required, with its confidence limit in mind. */
public enum Standing {
  /** The lower confidence limit is at or above the requirement. */
  SHOWN("shown"),
  /** The estimate is at or above it, the limit is not. */
  NOT_SHOWN("not shown, though the estimate is above"),
  BELOW("below"),
  /** There is no index. */
  NOT_JUDGED("not judged");

  private final String words;

  Standing(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
