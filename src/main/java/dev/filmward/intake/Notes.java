package dev.filmward.intake;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Says in words what a person should know of how a file was read. Immutable. */
final class Notes {
  private final Dialect dialect;
  private final ZoneId plantZone;

  Notes(Dialect dialect, ZoneId plantZone) {
    this.dialect = dialect;
    this.plantZone = plantZone;
  }

  List<String> of(Set<Oddity> seen) {
    List<String> notes = new ArrayList<>();
    if (dialect.encoding() == Encoding.WINDOWS_1252) {
      notes.add("the bytes are not UTF-8; the file was read as Windows-1252");
    }
    if (seen.contains(Oddity.OTHER_THAN_UTF8)) {
      notes.add("some bytes are not UTF-8 as the rest is; they were read as Windows-1252");
    }
    List<String> ignored = dialect.ignoredColumns().stream().map(Column::heading).toList();
    if (!ignored.isEmpty()) {
      notes.add(Words.count(ignored.size(), "column") + " ignored: " + Words.some(ignored));
    }
    if (seen.contains(Oddity.LOCAL_TIME)) {
      notes.add("times without an offset were read as local times of " + plantZone);
    }
    if (seen.contains(Oddity.TIME_TWICE)) {
      notes.add(
          "some local times occur twice, where clocks were put back; the earlier of the two was"
              + " taken");
    }
    if (seen.contains(Oddity.DECIMAL_POINT) && seen.contains(Oddity.DECIMAL_COMMA)) {
      notes.add("some numbers have a decimal point and some a decimal comma; both were read");
    }
    if (seen.contains(Oddity.NO_SAMPLE)) {
      notes.add("some rows do not name their sample; such rows of a roll count as one sample");
    }
    return notes;
  }
}
