package dev.filmward.store;

import dev.filmward.film.Sample;
import dev.filmward.subgroup.Subgroup;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * One sample of a block.
 *
 * @param takenAt microseconds since 1970 UTC
 * @param figures by position; positions that the sample has no place for are left out
 */
record BlockEntry(Id id, long takenAt, List<Optional<Subgroup>> figures)
    implements Comparable<BlockEntry> {
  private static final Comparator<BlockEntry> ORDER =
      Comparator.comparingLong(BlockEntry::takenAt)
          .thenComparing(entry -> entry.id.roll)
          .thenComparing(entry -> entry.id.sample);

  /** Who the sample is, and by which file it came. */
  record Id(long sampleId, long fileId, String roll, String sample) {}

  /** A stored sample with some figures. */
  static BlockEntry of(SampleTable.Stored stored, List<Optional<Subgroup>> figures) {
    Sample sample = stored.sample();
    return new BlockEntry(
        new Id(stored.id(), stored.fileId(), sample.key().roll(), sample.key().sample()),
        Times.toMicros(sample.takenAt()),
        figures);
  }

  @Override
  public int compareTo(BlockEntry other) {
    return ORDER.compare(this, other);
  }
}
