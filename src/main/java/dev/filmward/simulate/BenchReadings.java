package dev.filmward.simulate;

import dev.filmward.film.Structure;
import java.util.SplittableRandom;

/**
 * Draws thicknesses of each layer from a table of 4096 normal numbers around its target, in
 * thousandths of um. One owner; not thread safe.
 */
final class BenchReadings {
  private static final int TABLE_BITS = 12;
  private static final double DEVIATION = 0.02;

  private final int[][] thousandthsByPosition;
  private final SplittableRandom bits;

  BenchReadings(Structure structure, long seed) {
    Noise noise = new Noise(seed);
    this.thousandthsByPosition =
        structure.reported().stream()
            .mapToDouble(layer -> layer.individual().target().orElseThrow())
            .mapToObj(targetUm -> table(targetUm, noise))
            .toArray(int[][]::new);
    this.bits = new SplittableRandom(~seed);
  }

  private static int[] table(double targetUm, Noise noise) {
    int[] table = new int[1 << TABLE_BITS];
    for (int i = 0; i < table.length; i++) {
      table[i] = (int) Math.rint(1000 * targetUm * (1 + DEVIATION * noise.normal()));
    }
    return table;
  }

  int thousandths(int position) {
    return thousandthsByPosition[position - 1][(int) (bits.nextLong() >>> (64 - TABLE_BITS))];
  }
}
