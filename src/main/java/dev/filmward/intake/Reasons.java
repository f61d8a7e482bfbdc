package dev.filmward.intake;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** Says in words why a row or a reading cannot be used, and what should stand there instead. */
final class Reasons {
  private static final String UNMEASURED = "; leave it empty where nothing was measured";

  private Reasons() {}

  /** Of a row that could not be split into as many fields as the header has. */
  static String notSplit(Row row, int columns) {
    if (!row.fault.isEmpty()) {
      return row.fault;
    }
    return Words.count(row.count, "field")
        + " where the header has "
        + columns
        + "; a field that holds a separator must be quoted";
  }

  static String noTime(String value) {
    return Words.quoted(value)
        + " is not a date and time; write it like 2026-11-25 09:30:00, with an offset such as"
        + " +01:00 where it is known";
  }

  static String notOnTheClock(LocalDateTime local, ZoneId zone) {
    return local.toLocalDate()
        + " "
        + local.toLocalTime()
        + " does not occur in "
        + zone
        + ", where clocks were put forward; write the time with its offset";
  }

  static String noLane(String value, int greatest) {
    return Words.quoted(value) + " is not a lane; lanes are whole numbers from 0 to " + greatest;
  }

  static String noTemperature(String value) {
    return Words.quoted(value)
        + " is not a temperature of film; write degrees Celsius from -100 to 300, as in 23.5, or"
        + " leave it empty where it was not measured";
  }

  static String unknownStructure(String code, Structures structures) {
    List<String> codes = structures.all().stream().map(Structure::code).toList();
    return Words.quoted(code) + " is not a known structure; " + instead(code, codes);
  }

  static String unknownLayer(String name, Structure structure) {
    Optional<ReportedLayer> group = reportedWith(name, structure);
    if (group.isPresent()) {
      return Words.quoted(name)
          + " is not reported by itself in "
          + Words.cut(structure.code())
          + "; it is part of "
          + Words.quoted(group.get().name());
    }
    List<String> names = structure.reported().stream().map(ReportedLayer::name).toList();
    return Words.quoted(name)
        + " is not one of the "
        + Words.count(names.size(), "reported layer")
        + " of "
        + Words.cut(structure.code())
        + "; "
        + instead(name, names);
  }

  /** Of a column headed by a position that the structure does not have. */
  static String noPosition(int position, Structure structure) {
    return Words.cut(structure.code())
        + " has "
        + Words.count(structure.reported().size(), "reported layer")
        + " and no layer "
        + position
        + UNMEASURED;
  }

  static String noNumber(String value) {
    boolean bothSigns = value.indexOf('.') >= 0 && value.indexOf(',') >= 0;
    return Words.quoted(value)
        + " is not a number"
        + (bothSigns ? "; thousands separators are not read, write it like 1234.5" : "")
        + UNMEASURED;
  }

  static String notFinite(String value) {
    return Words.quoted(value) + " is not finite" + UNMEASURED;
  }

  static String tooLarge(String value) {
    return Words.quoted(value) + " is too large for a thickness" + UNMEASURED;
  }

  static String notAboveZero(String value) {
    return Words.quoted(value) + " is not above zero" + UNMEASURED;
  }

  private static Optional<ReportedLayer> reportedWith(String name, Structure structure) {
    return structure.reported().stream()
        .filter(group -> group.members().stream().map(Layer::name).anyMatch(name::equals))
        .findFirst();
  }

  private static String instead(String word, List<String> known) {
    if (known.isEmpty()) {
      return "none is known yet";
    }
    return Nearest.to(word, known)
        .map(name -> "the nearest is " + Words.quoted(name))
        .orElseGet(() -> "known are " + Words.some(known));
  }
}
