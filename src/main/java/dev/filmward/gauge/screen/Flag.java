package dev.filmward.gauge.screen;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Readings of one sample that look misread. Immutable.
 *
 * @param positions of the reported layers concerned, from 1, ascending
 * @param lanes the gauge's numbers of the lanes concerned, ascending
 * @param evidence a sentence with the numbers that led to it
 */
public record Flag(
    Misread kind,
    List<Integer> positions,
    List<Integer> lanes,
    Strength strength,
    Effect effect,
    String evidence) {

  /** How sure it is that the film was misread, rather than that it is so. */
  public enum Strength {
    /** No process does this. */
    CERTAIN,
    /** A process might. */
    LIKELY;

    /** As written in files and addresses. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    /** The strength that is written so. */
    public static Strength fromWord(String word) {
      return Arrays.stream(values())
          .filter(strength -> strength.word().equals(word))
          .findFirst()
          .orElseThrow(() -> new IllegalArgumentException("no strength \"" + word + "\""));
    }
  }

  /** What the readings do to the sample's means. */
  public enum Effect {
    /**
     * They move a mean by more than one standard deviation of the samples' means, or no reading of
     * a layer is left that could be believed.
     */
    SPOILS_THE_MEAN,
    /** The means can be used as they are. */
    LEAVES_THE_MEAN
  }

  public Flag {
    positions = List.copyOf(positions);
    lanes = List.copyOf(lanes);
    if (positions.isEmpty() || lanes.isEmpty() || evidence.isBlank()) {
      throw new IllegalArgumentException("a flag is of layers and lanes, and says why");
    }
  }

  /** Whether the sample cannot be charted with these readings in it. */
  public boolean isReasonToHoldOut() {
    return strength == Strength.CERTAIN && effect == Effect.SPOILS_THE_MEAN;
  }

  Flag with(Effect other) {
    return new Flag(kind, positions, lanes, strength, other, evidence);
  }
}
