package dev.filmward.intake;

import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Optional;

/**
 * Reads what a row says of all its readings: time, structure, sample and lane. A row where this
 * cannot be read is rejected whole.
 *
 * <p>Must be shown every row. What has not changed since the row before is not looked at again, and
 * stays the same object; nothing else is remembered. One owner, one thread.
 */
final class RowHead {
  private static final int GREATEST_LANE = 99_999;

  private final Dialect dialect;
  private final Structures structures;
  private final Times times;
  private final Tally tally;
  private final FieldMemo takenAtField;
  private final FieldMemo structureField;
  private final FieldMemo lineField;
  private final FieldMemo rollField;
  private final FieldMemo sampleField;
  private final int laneField;

  /** How many fields at the start of a row hold all of the head but the lane. */
  private final int width;

  private boolean isUsable;
  private boolean settled;
  private boolean timeIsGood;
  private Optional<Structure> structure = Optional.empty();
  private SampleKey key = new SampleKey("", "", "", "");
  private SampleKey given = key;
  private int lane;
  private boolean sawNoSample;

  RowHead(Dialect dialect, Structures structures, Times times, Tally tally) {
    this.dialect = dialect;
    this.structures = structures;
    this.times = times;
    this.tally = tally;
    this.takenAtField = new FieldMemo(dialect.indexOf(Field.TAKEN_AT));
    this.structureField = new FieldMemo(dialect.indexOf(Field.STRUCTURE));
    this.lineField = new FieldMemo(dialect.indexOf(Field.LINE));
    this.rollField = new FieldMemo(dialect.indexOf(Field.ROLL));
    this.sampleField = new FieldMemo(dialect.indexOf(Field.SAMPLE));
    this.laneField = dialect.indexOf(Field.LANE);
    int last = Math.max(takenAtField.field(), structureField.field());
    last = Math.max(last, Math.max(lineField.field(), rollField.field()));
    this.width = Math.max(last, sampleField.field()) + 1;
  }

  /** Whether the row can be used; if not, it has been rejected. */
  boolean read(Row row) {
    isUsable = look(row);
    return isUsable;
  }

  /** Whether the row that was shown last could be used. */
  boolean isUsable() {
    return isUsable;
  }

  private boolean look(Row row) {
    if (!row.fault.isEmpty() || row.count != dialect.columns().size()) {
      settled = false;
      tally.rejectRow(row, Reasons.notSplit(row, dialect.columns().size()));
      return false;
    }
    if (!settled || row.unchanged < width) {
      settle(row);
    }
    return (timeIsGood && structure.isPresent() && readLane(row)) || reject(row);
  }

  /**
   * Moves on to another sample of the same line, structure and roll, whose row is not split; false,
   * and nothing moved, where its time needs a closer look.
   */
  boolean goOn(byte[] bytes, int from, NextSample next) {
    if (!times.readUsual(bytes, from + next.timeStart(), from + next.timeEnd())) {
      return false;
    }
    settled = false;
    takenAtField.remember(bytes, from + next.timeStart(), from + next.timeEnd());
    int start = from + next.sampleStart();
    int end = from + next.sampleEnd();
    if (sampleField.changes(bytes, start, end)) {
      String sample = new String(bytes, start, end - start, StandardCharsets.ISO_8859_1);
      SampleKey fresh = new SampleKey(key.line(), key.structure(), key.roll(), sample);
      key = fresh.equals(given) ? given : fresh;
    }
    return true;
  }

  /**
   * The sample, for a reading that is handed on now; one that is handed on again is the same
   * object.
   */
  SampleKey giveKey() {
    given = key;
    return key;
  }

  /** The sample, without handing it on. */
  SampleKey key() {
    return key;
  }

  Instant takenAt() {
    return times.instant();
  }

  /** Only after a row that can be used. */
  Structure structure() {
    return structure.orElseThrow();
  }

  int lane() {
    return lane;
  }

  /** Whether a row had no sample. */
  boolean sawNoSample() {
    return sawNoSample;
  }

  private void settle(Row row) {
    settled = true;
    if (takenAtField.changes(row)) {
      timeIsGood = times.read(row, takenAtField.field());
    }
    boolean other = structureField.changes(row);
    if (other) {
      structure = structures.find(structureField.text(row));
    }
    other |= lineField.changes(row);
    other |= rollField.changes(row);
    other |= sampleField.changes(row);
    if (other && structure.isPresent()) {
      rename(row);
    }
  }

  private void rename(Row row) {
    SampleKey fresh =
        new SampleKey(
            lineField.text(row),
            structureField.text(row),
            rollField.text(row),
            sampleField.text(row));
    key = fresh.equals(given) ? given : fresh;
    sawNoSample |= fresh.sample().isEmpty();
  }

  private boolean readLane(Row row) {
    int start = row.from + row.start[laneField];
    int end = row.from + row.end[laneField];
    int value = 0;
    for (int i = start; i < end; i++) {
      int digit = row.bytes[i] - '0';
      if (digit < 0 || digit > 9) {
        return false;
      }
      value = Math.min(value * 10 + digit, GREATEST_LANE + 1);
    }
    lane = value;
    return end > start && value <= GREATEST_LANE;
  }

  private boolean reject(Row row) {
    if (!timeIsGood) {
      tally.rejectRow(row, dialect.columns().get(takenAtField.field()), times.reason());
    } else if (structure.isEmpty()) {
      String reason = Reasons.unknownStructure(structureField.text(row), structures);
      tally.rejectRow(row, dialect.columns().get(structureField.field()), reason);
    } else {
      String reason = Reasons.noLane(row.text(laneField), GREATEST_LANE);
      tally.rejectRow(row, dialect.columns().get(laneField), reason);
    }
    return false;
  }
}
