package dev.filmward.pipeline;

import dev.filmward.film.SampleKey;

/**
 * Knows which samples have come, by 64 bits of each: no sample is taken for new that is not, but
 * one in about 2^64 / n may be taken for one that has come. Eight to twenty bytes a sample. For one
 * thread.
 */
final class SeenSamples {
  private static final long FACTOR = 0x9E3779B97F4A7C15L;

  private long[] slots = new long[1 << 12];
  private int count;

  /** Whether it is the first time. */
  boolean add(SampleKey key) {
    if (count > slots.length / 4 * 3) {
      grow();
    }
    boolean isNew = put(slots, hash(key));
    count += isNew ? 1 : 0;
    return isNew;
  }

  private static boolean put(long[] slots, long hash) {
    int at = (int) hash & (slots.length - 1);
    while (slots[at] != 0) {
      if (slots[at] == hash) {
        return false;
      }
      at = (at + 1) & (slots.length - 1);
    }
    slots[at] = hash;
    return true;
  }

  private void grow() {
    long[] larger = new long[2 * slots.length];
    for (long hash : slots) {
      if (hash != 0) {
        put(larger, hash);
      }
    }
    slots = larger;
  }

  /** Never 0. */
  private static long hash(SampleKey key) {
    long hash = mixed(1, key.sample());
    hash = mixed(hash, key.roll());
    hash = mixed(hash, key.structure());
    hash = mixed(hash, key.line());
    return hash == 0 ? FACTOR : hash;
  }

  private static long mixed(long seed, String text) {
    long hash = seed + text.length();
    for (int i = 0; i < text.length(); i++) {
      hash = (hash ^ text.charAt(i)) * FACTOR;
      hash ^= hash >>> 29;
    }
    return hash * FACTOR;
  }
}
