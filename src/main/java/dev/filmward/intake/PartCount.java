package dev.filmward.intake;

import java.util.EnumSet;
import java.util.Set;

/**
 * What became of a part of a file. Immutable.
 *
 * @param begin where the first line starts that was taken for the start of a row
 * @param next what comes after the part
 * @param lines in the part
 */
public record PartCount(
    long begin, FilePart next, long lines, Tally.Counts counts, Set<Oddity> oddities) {

  /** Whether the part was read from the right place, given what really comes there. */
  public boolean follows(FilePart truth) {
    return truth.startsPlainlyAt(begin);
  }

  /** Sums parts up. One owner, one thread. */
  public static final class Sum {
    private Tally.Counts counts = Tally.Counts.NONE;
    private final Set<Oddity> oddities = EnumSet.noneOf(Oddity.class);

    public void add(PartCount part) {
      counts = counts.plus(part.counts);
      oddities.addAll(part.oddities);
    }

    Tally.Counts counts() {
      return counts;
    }

    Set<Oddity> oddities() {
      return oddities;
    }
  }
}
