package dev.filmward.store;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Who the samples of a block are, in the bytes in which they are kept: their number; then their
 * ids, files and times, a column each; then roll and sample of each as text with its length, a
 * length of -1 for the roll of the sample before. Big-endian. For one thread.
 */
final class BlockKeys {
  private static final int SAME_ROLL = -1;

  private final ByteBuffer bytes;
  private final int count;
  private final List<BlockEntry.Id> ids = new ArrayList<>();

  BlockKeys(byte[] kept) {
    bytes = ByteBuffer.wrap(kept);
    count = bytes.getInt(0);
  }

  static byte[] of(List<BlockEntry> entries) {
    int texts = 0;
    List<byte[]> names = new ArrayList<>();
    for (BlockEntry entry : entries) {
      names.add(entry.id().roll().getBytes(StandardCharsets.UTF_8));
      names.add(entry.id().sample().getBytes(StandardCharsets.UTF_8));
    }
    for (byte[] name : names) {
      texts += Integer.BYTES + name.length;
    }
    ByteBuffer out =
        ByteBuffer.allocate(Integer.BYTES + entries.size() * 3 * Long.BYTES + texts)
            .putInt(entries.size());
    entries.forEach(entry -> out.putLong(entry.id().sampleId()));
    entries.forEach(entry -> out.putLong(entry.id().fileId()));
    entries.forEach(entry -> out.putLong(entry.takenAt()));
    for (int i = 0; i < entries.size(); i++) {
      boolean same = i > 0 && entries.get(i).id().roll().equals(entries.get(i - 1).id().roll());
      if (same) {
        out.putInt(SAME_ROLL);
      } else {
        out.putInt(names.get(2 * i).length).put(names.get(2 * i));
      }
      out.putInt(names.get(2 * i + 1).length).put(names.get(2 * i + 1));
    }
    byte[] kept = new byte[out.position()];
    out.flip().get(kept);
    return kept;
  }

  int count() {
    return count;
  }

  long takenAt(int place) {
    return column(2, place);
  }

  long sampleId(int place) {
    return column(0, place);
  }

  BlockEntry.Id id(int place) {
    if (ids.isEmpty()) {
      readIds();
    }
    return ids.get(place);
  }

  private void readIds() {
    bytes.position(Integer.BYTES + 3 * Long.BYTES * count);
    String roll = "";
    for (int place = 0; place < count; place++) {
      int length = bytes.getInt();
      if (length != SAME_ROLL) {
        roll = text(length);
      }
      String sample = text(bytes.getInt());
      ids.add(new BlockEntry.Id(column(0, place), column(1, place), roll, sample));
    }
  }

  private String text(int length) {
    int at = bytes.position();
    bytes.position(at + length);
    return new String(bytes.array(), at, length, StandardCharsets.UTF_8);
  }

  private long column(int column, int place) {
    return bytes.getLong(Integer.BYTES + Long.BYTES * (column * count + place));
  }
}
