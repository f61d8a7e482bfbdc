package dev.filmward.pipeline;

import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalLong;

/**
 * Something that happened at a line, or was decided about it. Immutable.
 *
 * @param at when it happened, or from when on it holds
 * @param alarm the alarm that it is about
 * @param said what more there is to say, by the names that {@link Kind} lists
 */
public record LineEvent(Instant at, Kind kind, OptionalLong alarm, Map<String, String> said) {

  /** What can happen, with what is said of it. */
  public enum Kind {
    /** The first sample of a film after another one, or after none: structure, roll. */
    FILM,
    /** The first sample of a roll: roll, structure. */
    ROLL,
    /** A shift began: shift (as addresses name it), name, crew. */
    SHIFT,
    /** What somebody said the line is doing: mode, by, reason, shift. */
    MODE,
    /** An alarm opened: title, structure. */
    ALARM,
    /** An alarm was taken: title, structure, by. */
    TAKEN,
    /** The film was as usual again before anybody had taken the alarm: title, structure. */
    RETURNED,
    /**
     * A version of limits holds from then on, or went out of force: version, state, structure, by,
     * reason.
     */
    LIMITS,
    /** Another version of a structure holds from then on: structure, version, by, reason. */
    STRUCTURE,
    /**
     * The gauge of the line was calibrated: calibration (its number), gauge, layer (or resin),
     * structure, by, reason.
     */
    CALIBRATED,
    /**
     * Readings of a layer are shown otherwise from then on, or as before since a version was taken
     * back: layer, position, version, structure, by, reason, takesBack.
     */
    RESCALED,
    /** A note that somebody pinned to that moment: text, by, shift. */
    NOTE,
    /** What people wrote down of the line: what, words, by, shift. */
    LOG;

    /** As answers name it. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  public LineEvent {
    said = Map.copyOf(said);
  }

  static LineEvent of(Instant at, Kind kind, Map<String, String> said) {
    return new LineEvent(at, kind, OptionalLong.empty(), said);
  }
}
