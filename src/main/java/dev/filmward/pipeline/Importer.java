package dev.filmward.pipeline;

import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.intake.FileCount;
import dev.filmward.intake.FileHead;
import dev.filmward.intake.FileRefused;
import dev.filmward.intake.KeptHead;
import dev.filmward.intake.Rejection;
import dev.filmward.pipeline.BatchWriter.Batch;
import dev.filmward.pipeline.BatchWriter.Sum;
import dev.filmward.pipeline.SampleWriter.Came;
import dev.filmward.store.FileEntry;
import dev.filmward.store.FileEntry.Arrivals;
import dev.filmward.store.FileEntry.Counts;
import dev.filmward.store.HeldRowTable.Head;
import dev.filmward.store.QuarantinedRow;
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
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.function.Function;

/**
 * Reads one file into the store, a batch of samples a transaction; each transaction holds its
 * samples, their signals and their alarms. A file that is broken off keeps what was confirmed, and
 * reading it again adds only the rest. For one thread, for one file.
 */
final class Importer {
  private static final int SAMPLES_PER_TRANSACTION = 10_000;
  private static final int READINGS_PER_TRANSACTION = 400_000;
  private static final int ROWS_PER_TRANSACTION = 5000;

  /** Sources that are an act of a person; mending notes itself. */
  private static final Set<String> BY_PEOPLE = Set.of("import", "upload");

  private static final char NUL = '\0';
  private static final char PICTURE_OF_NUL = '\u2400';

  private final Store store;
  private final Judging judging;
  private final List<Came> samples = new ArrayList<>();
  private final List<QuarantinedRow> rejected = new ArrayList<>();
  private final Instant receivedAt;
  private Optional<KeptHead> head = Optional.empty();
  private long places;

  Importer(Store store, Judging judging, Instant receivedAt) {
    this.store = store;
    this.judging = judging;
    this.receivedAt = receivedAt;
  }

  /** Reads the head of a file. */
  @FunctionalInterface
  interface Opening {
    FileHead head(InputStream in) throws IOException, FileRefused;
  }

  FileEntry read(IncomingFile file, Opening opening) {
    try (BatchWriter writer = new BatchWriter(store, judging, file, receivedAt)) {
      return read(file, opening, writer);
    }
  }

  private FileEntry read(IncomingFile file, Opening opening, BatchWriter writer) {
    SampleAssembler assembler = new SampleAssembler(draft -> take(draft, writer));
    try (InputStream in = file.opener().open()) {
      FileHead opened = opening.head(in);
      head = opened.kept();
      FileCount count =
          opened.readRest(file.view().apply(assembler), rejection -> quarantine(rejection, writer));
      assembler.finish();
      LongWork.current().goOn();
      return writer.finish(
          batch(), (tables, all) -> finish(tables, entry(file, count, all, assembler.repeated())));
    } catch (FileRefused | IOException e) {
      return brokenOff(file, writer, all -> reason(e));
    } catch (CancellationException e) {
      return brokenOff(file, writer, Importer::cancelled);
    }
  }

  /** What was confirmed stays; the end of the file says so. */
  private FileEntry brokenOff(IncomingFile file, BatchWriter writer, Function<Sum, String> why) {
    return writer.finish(
        Batch.NOTHING, (tables, all) -> finish(tables, refused(file, all, why.apply(all))));
  }

  private static String reason(Exception e) {
    return e.getMessage() == null ? e.toString() : e.getMessage();
  }

  private static String cancelled(Sum all) {
    long stored = all.arrivals().fresh() + all.arrivals().corrected();
    return stored == 0
        ? "it was cancelled; nothing of it was stored"
        : "it was cancelled; "
            + stored
            + " readings that were stored before stay, and the file may come again";
  }

  private FileEntry finish(Tables tables, FileEntry entry) {
    tables.files().finish(entry, receivedAt);
    if (entry.counts().quarantined() > 0) {
      head.ifPresent(
          kept -> tables.heldRows().keepHead(entry.id(), new Head(kept.text(), kept.mapping())));
    }
    if (entry.counts().arrivals().corrected() > 0 && BY_PEOPLE.contains(entry.source())) {
      tables.audit().add(Audited.corrections(entry));
    }
    return entry;
  }

  private void take(SampleDraft draft, BatchWriter writer) {
    Sample sample = withoutNul(draft.toSample());
    samples.add(new Came(sample, draft.structure()));
    places += (long) sample.layers() * sample.laneCount();
    if (samples.size() >= SAMPLES_PER_TRANSACTION || places >= READINGS_PER_TRANSACTION) {
      writer.begin(batch());
    }
  }

  /** Not every database has a place for NUL in a name: its picture (U+2400) stands in for it. */
  private static Sample withoutNul(Sample sample) {
    SampleKey key = sample.key();
    SampleKey shown =
        new SampleKey(
            key.line().replace(NUL, PICTURE_OF_NUL),
            key.structure().replace(NUL, PICTURE_OF_NUL),
            key.roll().replace(NUL, PICTURE_OF_NUL),
            key.sample().replace(NUL, PICTURE_OF_NUL));
    return shown.equals(key) ? sample : sample.withKey(shown);
  }

  private void quarantine(Rejection rejection, BatchWriter writer) {
    rejected.add(
        new QuarantinedRow(
            rejection.line(),
            rejection.column(),
            rejection.value(),
            rejection.reason(),
            rejection.raw(),
            rejection.readings()));
    if (rejected.size() >= ROWS_PER_TRANSACTION) {
      writer.begin(batch());
    }
  }

  private Batch batch() {
    Batch batch = new Batch(samples, rejected);
    samples.clear();
    rejected.clear();
    places = 0;
    return batch;
  }

  private FileEntry entry(IncomingFile file, FileCount count, Sum all, long repeated) {
    Arrivals came = all.arrivals();
    Arrivals arrivals = new Arrivals(came.fresh(), came.known() + repeated, came.corrected());
    List<String> notes = new ArrayList<>(count.notes());
    notes.addAll(all.notes());
    return new FileEntry(
        all.fileId(),
        file.name(),
        file.source(),
        file.sender(),
        receivedAt,
        new Counts(count.rows(), count.readings(), count.missing(), count.quarantined(), arrivals),
        String.join("\n", notes),
        Optional.empty(),
        0);
  }

  private FileEntry refused(IncomingFile file, Sum all, String reason) {
    return new FileEntry(
        all.fileId(),
        file.name(),
        file.source(),
        file.sender(),
        receivedAt,
        new Counts(0, 0, 0, 0, all.arrivals()),
        "",
        Optional.of(reason),
        0);
  }
}
