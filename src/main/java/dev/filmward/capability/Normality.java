package dev.filmward.capability;

/** Whether indices and parts per million that assume a normal distribution may be trusted. */
public enum Normality {
  NORMAL("nothing speaks against a normal distribution"),
  NOT_NORMAL("not normal: use the percentile indices, and look at the lanes one by one"),
  NOT_JUDGED("too few different readings to judge normality");

  private final String words;

  Normality(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
