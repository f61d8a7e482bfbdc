package dev.filmward.gauge.screen;

import java.util.Arrays;
import java.util.Locale;

/** In what way readings look misread. */
public enum Misread {
  /** A layer reads like two, and the next ones move up one place. */
  BOUNDARY_NOT_FOUND("a boundary was not found"),
  /** Two neighbours trade thickness at a constant total time of flight. */
  NEIGHBOURS_TRADE("neighbours trade thickness"),
  /** An echo counts twice: a thin layer too many, the next ones move down, the last is lost. */
  DOUBLE_TRIGGER("an echo was counted twice"),
  /** Readings at the greatest thickness that the gauge is set to expect. */
  RANGE_END("pinned at the gauge's range end"),
  /** Blank or zero readings. */
  LOST_ECHO("an echo was lost"),
  /** What lies between gauge and film is read as a part of the first layer. */
  COUPLANT("couplant was counted as a layer"),
  /** A lane that is usually there has no readings at all. */
  LANE_MISSING("a lane is missing"),
  /** The film lay with its other face to the gauge. */
  UPSIDE_DOWN("the sample lay upside down"),
  /** Both walls of a tube were read as one film. */
  TWO_WALLS("two walls were measured"),
  /** The film is one of another structure. */
  OTHER_FILM("it is the film of another structure"),
  /** The same values again and again, to the last digit. */
  COPIED("values are copied"),
  /** An echo is taken at another wave of its pulse. */
  CYCLE_SKIP("an echo was taken one wave off"),
  /** All values are off by the factor between two units, or by a decimal point. */
  UNIT_SLIP("the unit or the decimal point slipped");

  private final String words;

  Misread(String words) {
    this.words = words;
  }

  /** As a part of a sentence. */
  public String words() {
    return words;
  }

  /** As written in files and addresses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * The kind that is written so.
   *
   * @throws IllegalArgumentException if there is none
   */
  public static Misread fromWord(String word) {
    return Arrays.stream(values())
        .filter(kind -> kind.word().equals(word))
        .findFirst()
        .orElseThrow(
            () -> new IllegalArgumentException("\"" + word + "\" is no kind of misreading"));
  }
}
