package dev.filmward.pipeline;

import dev.filmward.film.SampleKey;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Rolls and names of many samples in about a byte more than the names have: a roll is kept once for
 * samples that follow each other, names lie one after the other in blocks of {@value #BLOCK}. For
 * one thread.
 */
final class NameColumn {
  private static final int BLOCK = 64;
  private static final int MOST_BYTES_OF_A_LENGTH = 5;

  private final List<String> rolls = new ArrayList<>();

  /** By block: bytes of its names, and the roll before its first one. */
  private final List<byte[]> blocks = new ArrayList<>();

  private final LongColumn rollsBefore = new LongColumn();
  private byte[] open = new byte[1024];
  private int used;
  private int size;

  void add(SampleKey key) {
    if (size % BLOCK == 0) {
      rollsBefore.add(rolls.size() - 1L);
    }
    boolean isNewRoll = rolls.isEmpty() || !rolls.get(rolls.size() - 1).equals(key.roll());
    if (isNewRoll) {
      rolls.add(key.roll());
    }
    append(key.sample(), isNewRoll ? 1 : 0);
    size++;
    if (size % BLOCK == 0) {
      blocks.add(Arrays.copyOf(open, used));
      used = 0;
    }
  }

  String sample(int index) {
    return at(index).name();
  }

  String roll(int index) {
    return rolls.get(at(index).roll);
  }

  private void append(String name, int flag) {
    int length = name.length();
    reserve(length);
    int start = used;
    putLength(length * 2 + flag);
    for (int i = 0; i < length; i++) {
      char sign = name.charAt(i);
      if (sign >= 0x80) {
        used = start;
        appendUtf8(name.getBytes(StandardCharsets.UTF_8), flag);
        return;
      }
      open[used++] = (byte) sign;
    }
  }

  private void appendUtf8(byte[] name, int flag) {
    reserve(name.length);
    putLength(name.length * 2 + flag);
    System.arraycopy(name, 0, open, used, name.length);
    used += name.length;
  }

  private void reserve(int length) {
    int needed = used + length + MOST_BYTES_OF_A_LENGTH;
    if (needed > open.length) {
      open = Arrays.copyOf(open, 2 * needed);
    }
  }

  private void putLength(int value) {
    int rest = value;
    for (; rest >= 0x80; rest >>>= 7) {
      open[used++] = (byte) (rest | 0x80);
    }
    open[used++] = (byte) rest;
  }

  private Entry at(int index) {
    int block = index / BLOCK;
    Entry entry = new Entry(block < blocks.size() ? blocks.get(block) : open);
    entry.roll = (int) rollsBefore.get(block);
    for (int i = 0; i <= index % BLOCK; i++) {
      entry.next();
    }
    return entry;
  }

  /** Walks along the names of a block. */
  private static final class Entry {
    private final byte[] bytes;
    private int start;
    private int end;
    private int roll;

    Entry(byte[] bytes) {
      this.bytes = bytes;
    }

    void next() {
      int value = 0;
      start = end;
      for (int shift = 0; bytes[start] < 0; shift += 7) {
        value |= (bytes[start++] & 0x7F) << shift;
      }
      // the last byte of a length has its highest bit clear
      int shift = 7 * (start - end);
      value |= bytes[start++] << shift;
      roll += value & 1;
      end = start + (value >>> 1);
    }

    String name() {
      return new String(bytes, start, end - start, StandardCharsets.UTF_8);
    }
  }
}
