package dev.filmward.pipeline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A growing column of small numbers that are mostly all the same. For one thread. */
final class SizeColumn {
  private static final int CHUNK = 4096;

  /** Of chunks whose numbers are all the same, just that number. */
  private final List<int[]> chunks = new ArrayList<>();

  private int[] last = {};
  private int size;

  void add(int value) {
    int offset = size % CHUNK;
    if (offset == 0) {
      last = new int[] {value};
      chunks.add(last);
    } else if (last.length > 1) {
      last[offset] = value;
    } else if (last[0] != value) {
      int[] all = new int[CHUNK];
      Arrays.fill(all, 0, offset, last[0]);
      all[offset] = value;
      last = all;
      chunks.set(chunks.size() - 1, all);
    }
    size++;
  }

  int get(int index) {
    int[] chunk = chunks.get(index / CHUNK);
    return chunk.length == 1 ? chunk[0] : chunk[index % CHUNK];
  }
}
