package dev.filmward.intake;

import java.util.Locale;

/** What a column of a readings file holds. */
public enum Field {
  TAKEN_AT,
  LINE,
  STRUCTURE,
  ROLL,
  SAMPLE,
  LANE,
  /** Long layout: position or name of the reported layer. */
  LAYER,
  /** Long layout: the thickness. */
  THICKNESS,
  /** Wide layout: the thickness of one layer. */
  LAYER_THICKNESS,
  /** How warm the film was, degrees Celsius; not every file has it. */
  TEMPERATURE_C,
  /** Not one of ours. */
  IGNORED;

  /** As a heading. */
  public String heading() {
    return name().toLowerCase(Locale.ROOT);
  }
}
