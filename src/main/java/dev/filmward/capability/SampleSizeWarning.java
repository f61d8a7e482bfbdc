package dev.filmward.capability;

import java.util.Optional;

/**
 * Too few readings to say much about capability. Customary bounds: 125 readings (25 samples of 5)
 * for a report after ISO 22514-2, and 50 for any figure at all, as ISO 22514-3 asks of a machine.
 */
public enum SampleSizeWarning {
  TOO_FEW(50, "too few for an index: take it as a hint and collect 50 readings at least"),
  INDICATIVE(125, "indicative only: 125 readings or more make a firm figure");

  private final int enough;
  private final String words;

  SampleSizeWarning(int enough, String words) {
    this.enough = enough;
    this.words = words;
  }

  /** Empty where there are enough. */
  public static Optional<SampleSizeWarning> of(long n) {
    for (SampleSizeWarning warning : values()) {
      if (n < warning.enough) {
        return Optional.of(warning);
      }
    }
    return Optional.empty();
  }

  public String words() {
    return words;
  }
}
