package dev.filmward.simulate;

import java.util.SplittableRandom;

/**
 * A stream of uniform and standard normal numbers that depends only on a seed, a sample and a
 * stream number, so that a story can be entered at any sample.
 *
 * <p>The bits are those of {@link SplittableRandom}, which is SplitMix64 (Steele, Lea and Flood,
 * OOPSLA 2014, p. 453); only {@code nextLong} is used, and only {@link StrictMath} and exactly
 * rounded arithmetic after it, so that every JDK gives the same numbers. Normal numbers come from
 * the polar method (Marsaglia and Bray, SIAM Review 6 (1964) 260). One owner; not thread safe.
 */
final class Noise {
  private final SplittableRandom bits;
  private double spare;
  private boolean spareIsFresh;

  Noise(long seed) {
    this.bits = new SplittableRandom(seed);
  }

  /** What a sample's readings differ by from their expected values. */
  static Noise ofReadings(long seed, long sample) {
    return at(seed, 2 * sample);
  }

  /** What a sample as a whole differs by from its neighbours. */
  static Noise betweenSamples(long seed, long sample) {
    return at(seed, 2 * sample + 1);
  }

  private static Noise at(long seed, long place) {
    return new Noise(firstLong(firstLong(seed) + place));
  }

  private static long firstLong(long seed) {
    return new SplittableRandom(seed).nextLong();
  }

  /** From 0 inclusive to 1 exclusive, in steps of 2^-53. */
  double uniform() {
    return (bits.nextLong() >>> 11) * 0x1.0p-53;
  }

  /** Mean 0 and standard deviation 1. */
  double normal() {
    if (spareIsFresh) {
      spareIsFresh = false;
      return spare;
    }
    while (true) {
      double x = 2 * uniform() - 1;
      double y = 2 * uniform() - 1;
      double square = x * x + y * y;
      if (square > 0 && square < 1) {
        double stretch = Math.sqrt(-2 * StrictMath.log(square) / square);
        spare = y * stretch;
        spareIsFresh = true;
        return x * stretch;
      }
    }
  }
}
