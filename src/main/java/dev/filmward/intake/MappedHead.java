package dev.filmward.intake;

import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Reads what a row of a mapped file says of all its readings: time, structure and sample. A row
 * where this cannot be read is rejected whole. Must be shown every row that can be split, and is
 * the only one to look at these fields. One owner, one thread.
 */
final class MappedHead {
  private static final List<Field> NAMES =
      List.of(Field.LINE, Field.STRUCTURE, Field.ROLL, Field.SAMPLE);

  private final Structures structures;
  private final MappedTimes times;
  private final MappedField time;
  private final Map<Field, MappedField> names = new EnumMap<>(Field.class);
  private final List<Column> columns;
  private final Tally tally;
  private final boolean sampleIsTime;

  private boolean timeIsGood;
  private Optional<Structure> structure = Optional.empty();
  private SampleKey key = new SampleKey("", "", "", "");
  private SampleKey given = key;

  MappedHead(
      Mapping mapping,
      Structures structures,
      MappedTimes times,
      Function<Field, MappedField> fields,
      Tally tally) {
    this.structures = structures;
    this.times = times;
    this.time = fields.apply(Field.TAKEN_AT);
    NAMES.forEach(name -> names.put(name, fields.apply(name)));
    this.columns = new MappedColumns(mapping).all();
    this.tally = tally;
    this.sampleIsTime = mapping.source(Field.SAMPLE).kind() == Source.Kind.TAKEN_AT;
  }

  /** Whether the row can be used; if not, it has been rejected. */
  boolean read(Row row) {
    boolean changed = false;
    if (time.changes(row)) {
      timeIsGood = times.read(time.text());
      changed = true;
    }
    for (MappedField name : names.values()) {
      changed |= name.changes(row);
    }
    if (changed) {
      structure = structures.find(text(Field.STRUCTURE));
      rename();
    }
    return (timeIsGood && structure.isPresent()) || reject(row);
  }

  /** The sample of a row that can be used. */
  SampleKey key() {
    return key;
  }

  /** The sample, for a reading that is handed on now; the same object if it is the same sample. */
  SampleKey giveKey() {
    given = key;
    return key;
  }

  Instant takenAt() {
    return times.instant();
  }

  /** Only after a row that can be used. */
  Structure structure() {
    return structure.orElseThrow();
  }

  private void rename() {
    if (timeIsGood && structure.isPresent()) {
      String sample = sampleIsTime ? times.instant().toString() : text(Field.SAMPLE);
      SampleKey fresh =
          new SampleKey(text(Field.LINE), text(Field.STRUCTURE), text(Field.ROLL), sample);
      key = fresh.equals(given) ? given : fresh;
    }
  }

  private String text(Field field) {
    return field(field).text();
  }

  private MappedField field(Field field) {
    MappedField found = names.get(field);
    if (found == null) {
      throw new IllegalStateException(field + " is no name");
    }
    return found;
  }

  private boolean reject(Row row) {
    if (!timeIsGood) {
      rejectAt(row, time, times.reason());
    } else {
      MappedField at = field(Field.STRUCTURE);
      rejectAt(row, at, Reasons.unknownStructure(at.text(), structures));
    }
    return false;
  }

  /** Rejects a row because of a field, wherever that comes from. */
  void rejectAt(Row row, MappedField field, String reason) {
    if (field.column() < 0) {
      tally.rejectRow(row, reason);
    } else {
      tally.rejectRow(row, columns.get(field.column()), reason);
    }
  }
}
