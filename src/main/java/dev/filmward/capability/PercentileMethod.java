package dev.filmward.capability;

/** Where the percentiles of {@link PercentileIndices} come from. */
public enum PercentileMethod {
  EMPIRICAL("read off the ordered readings"),
  LOGNORMAL("from a lognormal distribution fitted to the readings"),
  BOX_COX("from readings made normal by a Box-Cox power");

  private final String words;

  PercentileMethod(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
