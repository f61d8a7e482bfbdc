package dev.filmward.intake;

import java.util.List;

/**
 * What became of a file: every place for a reading is a reading, missing or quarantined. Immutable.
 *
 * @param name of the file
 * @param rows that follow the header; blank lines are not counted
 * @param readings measured thicknesses
 * @param missing places where nothing was measured
 * @param quarantined places that could not be used
 * @param notes what a person should know of how the file was read, in words
 */
public record FileCount(
    String name, long rows, long readings, long missing, long quarantined, List<String> notes) {

  public FileCount {
    notes = List.copyOf(notes);
    if (!(rows >= 0) || !(readings >= 0) || !(missing >= 0) || !(quarantined >= 0)) {
      throw new IllegalArgumentException("counts of " + name + " are below zero");
    }
    long places = readings + missing + quarantined;
    if (rows == 0 ? places != 0 : places % rows != 0 || places == 0) {
      throw new IllegalArgumentException(
          name
              + ": "
              + rows
              + " rows do not give "
              + readings
              + " readings + "
              + missing
              + " missing + "
              + quarantined
              + " quarantined");
    }
  }
}
