package dev.filmward.pipeline;

import dev.filmward.film.Sample;
import dev.filmward.intake.FileCount;
import dev.filmward.intake.FileRefused;
import dev.filmward.intake.ReadingsParser;
import dev.filmward.intake.Rejection;
import dev.filmward.store.FileEntry;
import dev.filmward.store.FileEntry.Arrivals;
import dev.filmward.store.FileEntry.Counts;
import dev.filmward.store.QuarantinedRow;
import dev.filmward.store.SampleTable.Origin;
import dev.filmward.store.Store;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.SampleAssembler;
import dev.filmward.subgroup.SampleDraft;
import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Reads one file into the store, a batch of samples a transaction; each transaction holds its
 * samples, their signals and their alarms. A file that is broken off keeps what was confirmed, and
 * reading it again adds only the rest. For one thread, for one file.
 */
final class Importer {
  private static final int SAMPLES_PER_TRANSACTION = 1000;
  private static final int ROWS_PER_TRANSACTION = 5000;

  private final Store store;
  private final Judging judging;
  private final List<SampleDraft> drafts = new ArrayList<>();
  private final List<QuarantinedRow> rejected = new ArrayList<>();
  private final Instant receivedAt;
  private long fileId;
  private Arrivals arrivals = new Arrivals(0, 0, 0);

  Importer(Store store, Judging judging, Instant receivedAt) {
    this.store = store;
    this.judging = judging;
    this.receivedAt = receivedAt;
  }

  FileEntry read(IncomingFile file, ReadingsParser parser) {
    fileId = store.write(tables -> tables.files().begin(file.name(), file.source(), receivedAt));
    SampleAssembler assembler = new SampleAssembler(this::take);
    FileEntry entry;
    try (InputStream in = file.opener().open()) {
      FileCount count =
          parser.parse(in, file.name(), file.view().apply(assembler), this::quarantine);
      assembler.finish();
      flush();
      entry = entry(file, count, assembler.repeated());
    } catch (FileRefused | IOException e) {
      entry = refused(file, e);
    }
    FileEntry done = entry;
    store.change(tables -> tables.files().finish(done, receivedAt));
    return done;
  }

  private void take(SampleDraft draft) {
    drafts.add(draft);
    if (drafts.size() >= SAMPLES_PER_TRANSACTION) {
      flush();
    }
  }

  private void quarantine(Rejection rejection) {
    rejected.add(
        new QuarantinedRow(
            rejection.line(),
            rejection.column(),
            rejection.value(),
            rejection.reason(),
            rejection.raw(),
            rejection.readings()));
    if (rejected.size() >= ROWS_PER_TRANSACTION) {
      flush();
    }
  }

  private void flush() {
    if (drafts.isEmpty() && rejected.isEmpty()) {
      return;
    }
    Runnable afterwards = store.write(this::write);
    drafts.clear();
    rejected.clear();
    afterwards.run();
  }

  private Runnable write(Tables tables) {
    tables.files().quarantine(fileId, rejected);
    Judging.Round round = judging.begin(tables);
    SampleWriter writer = new SampleWriter(tables, new Origin(fileId, receivedAt));
    for (SampleDraft draft : drafts) {
      Optional<Sample> changed = writer.write(draft);
      changed.ifPresent(sample -> round.changed(sample, draft.structure()));
    }
    Arrivals more = writer.arrivals();
    arrivals =
        new Arrivals(
            arrivals.fresh() + more.fresh(),
            arrivals.known() + more.known(),
            arrivals.corrected() + more.corrected());
    return round.judge();
  }

  private FileEntry entry(IncomingFile file, FileCount count, long repeated) {
    Arrivals all =
        new Arrivals(arrivals.fresh(), arrivals.known() + repeated, arrivals.corrected());
    Counts counts =
        new Counts(count.rows(), count.readings(), count.missing(), count.quarantined(), all);
    return new FileEntry(
        fileId,
        file.name(),
        file.source(),
        receivedAt,
        counts,
        String.join("\n", count.notes()),
        Optional.empty());
  }

  private FileEntry refused(IncomingFile file, Exception why) {
    String reason = why.getMessage() == null ? why.toString() : why.getMessage();
    return new FileEntry(
        fileId, file.name(), file.source(), receivedAt, Counts.NONE, "", Optional.of(reason));
  }
}
