package dev.filmward.intake;

import java.util.ArrayList;
import java.util.List;

/** Says in words what a person should know of how a file was read. One owner, one thread. */
final class Notes {
  private final Dialect dialect;
  private final Text text;
  private final Times times;
  private final RowHead head;
  private final Cells cells;

  Notes(Dialect dialect, Text text, Times times, RowHead head, Cells cells) {
    this.dialect = dialect;
    this.text = text;
    this.times = times;
    this.head = head;
    this.cells = cells;
  }

  List<String> all() {
    List<String> notes = new ArrayList<>();
    if (dialect.encoding() == Encoding.WINDOWS_1252) {
      notes.add("the bytes are not UTF-8; the file was read as Windows-1252");
    }
    if (text.sawOtherThanUtf8()) {
      notes.add("some bytes are not UTF-8 as the rest is; they were read as Windows-1252");
    }
    List<String> ignored = dialect.ignoredColumns().stream().map(Column::heading).toList();
    if (!ignored.isEmpty()) {
      notes.add(Words.count(ignored.size(), "column") + " ignored: " + Words.some(ignored));
    }
    if (times.sawLocal()) {
      notes.add("times without an offset were read as local times of " + times.zone());
    }
    if (times.sawTwice()) {
      notes.add(
          "some local times occur twice, where clocks were put back; the earlier of the two was"
              + " taken");
    }
    if (cells.sawBothDecimalSigns()) {
      notes.add("some numbers have a decimal point and some a decimal comma; both were read");
    }
    if (head.sawNoSample()) {
      notes.add("some rows do not name their sample; such rows of a roll count as one sample");
    }
    return notes;
  }
}
