package dev.filmward.gauge.calibration;

import java.util.Locale;
import java.util.Optional;

/**
 * Between which velocities the resins of films usually lie at room temperature, m/s: starting
 * points, since published tables differ by 5 to 10 percent and grades by more than that.
 *
 * <p>Source: values from memory of handbook tables (Kaye and Laby; A. R. Selfridge, IEEE Trans.
 * Sonics Ultrason. 32 (1985) 381), interpolated by density for LLDPE and estimated for EVOH.
 */
public enum ResinRange {
  TIE_EVA(1650, 1900, "eva tie,tie eva,eva-tie,eva"),
  TIE(1900, 2050, "tie,mah"),
  LLDPE(1950, 2150, "lldpe,mlldpe,plastomer"),
  LDPE(1900, 2080, "ldpe"),
  MDPE(2030, 2060, "mdpe"),
  HDPE(2300, 2560, "hdpe"),
  EVOH(2500, 2900, "evoh"),
  PA(2300, 2770, "pa6,pa 6,nylon,pa"),
  PET(2400, 2600, "pet"),
  PP(2500, 2750, "pp"),
  PS(2320, 2400, "ps"),
  PVC(2330, 2400, "pvc");

  private final double leastMps;
  private final double greatestMps;
  private final String words;

  ResinRange(double leastMps, double greatestMps, String words) {
    this.leastMps = leastMps;
    this.greatestMps = greatestMps;
    this.words = words;
  }

  /** The family that a resin's name speaks of; empty where it speaks of none. */
  public static Optional<ResinRange> of(String resin) {
    String name = " " + resin.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", " ").strip() + " ";
    for (ResinRange range : values()) {
      for (String word : range.words.split(",", -1)) {
        if (name.contains(" " + word.replace('-', ' ') + " ")) {
          return Optional.of(range);
        }
      }
    }
    return Optional.empty();
  }

  public double leastMps() {
    return leastMps;
  }

  public double greatestMps() {
    return greatestMps;
  }

  public boolean contains(double mps) {
    return mps >= leastMps && mps <= greatestMps;
  }
}
