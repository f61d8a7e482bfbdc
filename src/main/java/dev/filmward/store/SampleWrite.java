package dev.filmward.store;

import dev.filmward.film.Sample;
import dev.filmward.store.SampleTable.Change;
import dev.filmward.store.SampleTable.Correction;
import dev.filmward.store.SampleTable.Origin;
import dev.filmward.store.SampleTable.Stored;
import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/** Writes samples of one production, new and changed ones, with all that hangs on them. */
final class SampleWrite {
  private final Handle handle;
  private final Database database;
  private final Origin origin;
  private final List<BlockEntry> leave = new ArrayList<>();
  private final List<BlockEntry> enter = new ArrayList<>();

  SampleWrite(Handle handle, Database database, Origin origin) {
    this.handle = handle;
    this.database = database;
    this.origin = origin;
  }

  /**
   * Writes.
   *
   * @param changes at least one, all of one production
   */
  void write(List<Change> changes) {
    long productionId = noteProduction(changes);
    List<Change> fresh = changes.stream().filter(change -> change.before().isEmpty()).toList();
    long nextId = database.nextId(handle, "sample");
    if (!fresh.isEmpty()) {
      insert(productionId, fresh, nextId);
    }
    if (fresh.size() < changes.size()) {
      update(changes);
    }
    correct(changes, nextId);
    new BlockTable(handle, database).change(productionId, leave, enter);
  }

  private long noteProduction(List<Change> changes) {
    String line = changes.get(0).now().key().line();
    String structure = changes.get(0).now().key().structure();
    handle
        .createUpdate(
            "INSERT INTO production (line, structure, samples, last_at)"
                + " VALUES (:line, :structure, :more, :at)"
                + " ON CONFLICT (line, structure) DO UPDATE"
                + " SET samples = production.samples + excluded.samples, last_at = CASE WHEN"
                + " excluded.last_at > production.last_at THEN excluded.last_at"
                + " ELSE production.last_at END")
        .bind("line", line)
        .bind("structure", structure)
        .bind("more", changes.stream().filter(change -> change.before().isEmpty()).count())
        .bind("at", changes.stream().mapToLong(SampleWrite::takenAt).max().orElseThrow())
        .execute();
    return handle
        .createQuery("SELECT id FROM production WHERE line = :line AND structure = :structure")
        .bind("line", line)
        .bind("structure", structure)
        .mapTo(Long.class)
        .one();
  }

  private static long takenAt(Change change) {
    return Times.toMicros(change.now().takenAt());
  }

  private void insert(long productionId, List<Change> fresh, long firstId) {
    long id = firstId;
    long receivedAt = Times.toMicros(origin.receivedAt());
    try (RowInsert rows =
        database.insert(
            handle,
            "sample",
            "id",
            "production_id",
            "roll",
            "sample",
            "taken_at",
            "received_at",
            "file_id",
            "lanes",
            "um",
            "celsius")) {
      for (Change change : fresh) {
        Sample sample = change.now();
        rows.number(id)
            .number(productionId)
            .text(sample.key().roll())
            .text(sample.key().sample())
            .number(takenAt(change))
            .number(receivedAt)
            .number(origin.fileId())
            .text(ReadingArray.ofLanes(sample))
            .text(ReadingArray.ofReadings(sample))
            .text(ReadingArray.ofCelsius(sample))
            .endRow();
        enter.add(entry(id, origin.fileId(), change));
        id++;
      }
    }
  }

  private void update(List<Change> changes) {
    PreparedBatch batch =
        handle.prepareBatch(
            "UPDATE sample SET taken_at = :takenAt, lanes = :lanes, um = :um, celsius = :celsius"
                + " WHERE id = :id");
    for (Change change : changes) {
      if (change.before().isPresent()) {
        Stored before = change.before().get();
        batch
            .bind("id", before.id())
            .bind("takenAt", takenAt(change))
            .bind("lanes", ReadingArray.ofLanes(change.now()))
            .bind("um", ReadingArray.ofReadings(change.now()))
            .bind("celsius", ReadingArray.ofCelsius(change.now()))
            .add();
        Change was = new Change(change.before(), before.sample(), List.of(), List.of());
        leave.add(entry(before.id(), before.fileId(), was));
        enter.add(entry(before.id(), before.fileId(), change));
      }
    }
    batch.execute();
  }

  private static BlockEntry entry(long id, long fileId, Change change) {
    Sample sample = change.now();
    return new BlockEntry(
        new BlockEntry.Id(id, fileId, sample.key().roll(), sample.key().sample()),
        takenAt(change),
        change.figures());
  }

  private void correct(List<Change> changes, long firstId) {
    PreparedBatch batch =
        handle.prepareBatch(
            "INSERT INTO correction"
                + " (sample_id, position, lane, old_um, new_um, file_id, corrected_at)"
                + " VALUES (:id, :position, :lane, :oldUm, :newUm, :fileId, :receivedAt)");
    long nextId = firstId;
    for (Change change : changes) {
      long id = change.before().isPresent() ? change.before().get().id() : nextId++;
      for (Correction correction : change.corrections()) {
        batch
            .bind("id", id)
            .bindMethods(correction)
            .bind("fileId", origin.fileId())
            .bind("receivedAt", Times.toMicros(origin.receivedAt()))
            .add();
      }
    }
    if (batch.size() > 0) {
      batch.execute();
    }
  }
}
