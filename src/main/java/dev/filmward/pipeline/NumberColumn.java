package dev.filmward.pipeline;

import java.util.ArrayList;
import java.util.List;

/** A growing column of numbers that is never copied as it grows. For one thread. */
final class NumberColumn {
  private static final int CHUNK = 4096;

  private final List<double[]> chunks = new ArrayList<>();
  private double[] last = {};
  private int size;

  void add(double value) {
    int offset = size % CHUNK;
    if (offset == 0) {
      last = new double[CHUNK];
      chunks.add(last);
    }
    last[offset] = value;
    size++;
  }

  double get(int index) {
    return chunks.get(index / CHUNK)[index % CHUNK];
  }
}
