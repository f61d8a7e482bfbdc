package dev.filmward.pipeline;

import dev.filmward.shift.Shift;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * All that one shift tells the next. Immutable.
 *
 * @param line empty for all lines
 * @param asOf when it was put together
 */
public record Handover(String line, Shift shift, Instant asOf, List<Section> sections) {

  /** What a section is about, in the order of the page. */
  public enum Part {
    LINES,
    OPEN_ALARMS,
    SET_ASIDE,
    NO_CAUSE,
    CARRIED_OVER,
    NOTES,
    NEARING,
    ROLLS,
    GAPS,
    FILES,
    SETTINGS,
    CALIBRATIONS,
    CLOSED;

    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Whether it shows the moment at which it is looked at, and so changes by itself. */
    boolean isOfTheMoment() {
      return this == LINES || this == NEARING;
    }
  }

  /** Whether anything of that kind is recorded at all. */
  public enum Kept {
    KEPT,
    NOT_YET
  }

  public record Section(Part part, Kept kept, List<Item> items) {
    public Section {
      items = List.copyOf(items);
    }
  }

  /**
   * One thing to tell.
   *
   * @param key by which it is known again, such as {@code alarm 12}
   * @param line empty where it is about the plant
   * @param state what it is in, in a word or two; a change of it is a change of the thing
   * @param detail the rest, in a sentence
   * @param at when it began
   */
  public record Item(
      String key, String line, String title, String state, String detail, Optional<Instant> at) {}

  public Handover {
    sections = List.copyOf(sections);
  }
}
