package dev.filmward.pipeline;

import java.util.ArrayList;
import java.util.List;

/** A growing column of whole numbers that is never copied as it grows. For one thread. */
final class LongColumn {
  private static final int CHUNK = 4096;

  private final List<long[]> chunks = new ArrayList<>();
  private long[] last = {};
  private int size;

  void add(long value) {
    int offset = size % CHUNK;
    if (offset == 0) {
      last = new long[CHUNK];
      chunks.add(last);
    }
    last[offset] = value;
    size++;
  }

  long get(int index) {
    return chunks.get(index / CHUNK)[index % CHUNK];
  }

  int size() {
    return size;
  }
}
