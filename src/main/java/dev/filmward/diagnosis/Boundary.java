package dev.filmward.diagnosis;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Something that is known to have happened at a moment and that a change may have begun with.
 *
 * @param at for a roll the time of its first sample
 * @param positions reported layers that it can have moved, from 1; empty where it may be any
 * @param words what people call it, for example the name of a lot; may be empty
 */
public record Boundary(Kind kind, Instant at, List<Integer> positions, String words) {

  /** What can happen. */
  public enum Kind {
    ROLL("a new roll"),
    SHIFT("a new shift"),
    RESIN_LOT("a new resin lot"),
    SCREEN_CHANGE("a screen change"),
    /** A new velocity or zero offset in the gauge, a new probe, or a re-scaling of readings. */
    CALIBRATION("a calibration of the gauge"),
    /** The line or the order was started. */
    RESTART("a start of the line");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }

    /** As written in files and addresses. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The kind of that word; {@link IllegalArgumentException} where there is none. */
    public static Kind fromWord(String word) {
      return Arrays.stream(values())
          .filter(kind -> kind.word().equals(word))
          .findFirst()
          .orElseThrow(() -> new IllegalArgumentException("no kind of boundary \"" + word + "\""));
    }
  }

  public Boundary {
    positions = List.copyOf(positions);
    if (positions.stream().anyMatch(position -> position < 1)) {
      throw new IllegalArgumentException("positions count from 1: " + positions);
    }
  }

  /** A boundary that any layer may have felt. */
  public static Boundary of(Kind kind, Instant at) {
    return new Boundary(kind, at, List.of(), "");
  }
}
