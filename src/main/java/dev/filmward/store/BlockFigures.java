package dev.filmward.store;

import dev.filmward.subgroup.Subgroup;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Optional;

/**
 * The subgroup figures of one characteristic for the samples of a block, in the bytes in which they
 * are kept: sizes, means, least and greatest readings and sums of squares, a column each.
 * Big-endian. A size of 0 means that nothing was measured, -1 that the sample has no such
 * characteristic. Immutable.
 */
final class BlockFigures {
  private static final int BYTES = Integer.BYTES + 4 * Double.BYTES;
  private static final int ABSENT = -1;

  private final ByteBuffer bytes;
  private final int count;

  BlockFigures(byte[] kept) {
    bytes = ByteBuffer.wrap(kept);
    count = kept.length / BYTES;
  }

  static byte[] of(List<BlockEntry> entries, int position) {
    int count = entries.size();
    ByteBuffer out = ByteBuffer.allocate(count * BYTES);
    for (int place = 0; place < count; place++) {
      List<Optional<Subgroup>> figures = entries.get(place).figures();
      if (position >= figures.size()) {
        out.putInt(Integer.BYTES * place, ABSENT);
      } else if (figures.get(position).isPresent()) {
        Subgroup subgroup = figures.get(position).get();
        out.putInt(Integer.BYTES * place, subgroup.size());
        out.putDouble(at(count, 0, place), subgroup.mean());
        out.putDouble(at(count, 1, place), subgroup.least());
        out.putDouble(at(count, 2, place), subgroup.greatest());
        out.putDouble(at(count, 3, place), subgroup.sumOfSquares());
      }
    }
    return out.array();
  }

  boolean isPresent(int place) {
    return size(place) != ABSENT;
  }

  int size(int place) {
    return bytes.getInt(Integer.BYTES * place);
  }

  double mean(int place) {
    return bytes.getDouble(at(count, 0, place));
  }

  double least(int place) {
    return bytes.getDouble(at(count, 1, place));
  }

  double greatest(int place) {
    return bytes.getDouble(at(count, 2, place));
  }

  double sumOfSquares(int place) {
    return bytes.getDouble(at(count, 3, place));
  }

  Optional<Subgroup> subgroup(int place) {
    return size(place) < 1
        ? Optional.empty()
        : Optional.of(
            new Subgroup(
                size(place), mean(place), least(place), greatest(place), sumOfSquares(place)));
  }

  private static int at(int count, int column, int place) {
    return Integer.BYTES * count + Double.BYTES * (column * count + place);
  }
}
