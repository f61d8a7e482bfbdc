package dev.filmward.pipeline;

import dev.filmward.pipeline.SampleWriter.Came;
import dev.filmward.store.FileEntry;
import dev.filmward.store.FileEntry.Arrivals;
import dev.filmward.store.QuarantinedRow;
import dev.filmward.store.SampleTable.Origin;
import dev.filmward.store.Store;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;

/**
 * Writes a file and what it gives, a batch a transaction, on a thread of its own while the file is
 * read on; never more than one batch ahead, so that memory stays bounded. The last batch is written
 * on the thread that reads, in one transaction with the end of its file; so a small file is one
 * transaction. For that one thread.
 */
final class BatchWriter implements AutoCloseable {
  /** As the id of a file of which nothing is written. */
  private static final long NOT_BEGUN = 0;

  private final Store store;
  private final Judging judging;
  private final IncomingFile file;
  private final Instant receivedAt;
  private @Nullable ExecutorService thread;
  private @Nullable Future<Written> underWay;
  private Sum sum = new Sum(NOT_BEGUN, new Arrivals(0, 0, 0), 0);

  BatchWriter(Store store, Judging judging, IncomingFile file, Instant receivedAt) {
    this.store = store;
    this.judging = judging;
    this.file = file;
    this.receivedAt = receivedAt;
  }

  /** What one transaction takes. */
  record Batch(List<Came> samples, List<QuarantinedRow> rejected) {
    static final Batch NOTHING = new Batch(List.of(), List.of());

    Batch {
      samples = List.copyOf(samples);
      rejected = List.copyOf(rejected);
    }
  }

  /**
   * What is written of a file.
   *
   * @param arrivals what its readings were to what was there
   * @param thinned readings of samples that have none any more
   */
  record Sum(long fileId, Arrivals arrivals, long thinned) {
    private Sum and(Arrivals more, long moreThinned) {
      Arrivals all =
          new Arrivals(
              arrivals.fresh() + more.fresh(),
              arrivals.known() + more.known(),
              arrivals.corrected() + more.corrected());
      return new Sum(fileId, all, thinned + moreThinned);
    }

    /** What a person should know of it. */
    List<String> notes() {
      return thinned == 0
          ? List.of()
          : List.of(
              thinned
                  + " readings belong to samples that were thinned to their figures; they count as"
                  + " known, cannot be compared any more and change nothing");
    }
  }

  /** Writes the end of a file, within its last transaction. */
  @FunctionalInterface
  interface Ending {
    FileEntry write(Tables tables, Sum all);
  }

  private record Written(Sum sum, int changed, Runnable afterwards) {}

  private record Ended(Written written, FileEntry entry) {}

  /** Begins to write a batch, once the one before it is written. */
  void begin(Batch batch) {
    await();
    if (thread == null) {
      thread = Executors.newSingleThreadExecutor(task -> new Thread(task, "import"));
    }
    LongWork work = LongWork.current();
    underWay = thread.submit(() -> work.during(() -> store.write(tables -> write(tables, batch))));
  }

  /** Writes the last batch and the end of the file, and comes back when all is written. */
  FileEntry finish(Batch batch, Ending ending) {
    await();
    Ended ended =
        store.write(
            tables -> {
              Written written = write(tables, batch);
              return new Ended(written, ending.write(tables, written.sum));
            });
    done(ended.written);
    return ended.entry;
  }

  /** Waits for what is under way, and lets the thread go. */
  @Override
  public void close() {
    if (thread != null) {
      try {
        await();
      } finally {
        thread.shutdown();
      }
    }
  }

  /** Changes nothing but the tables, since a transaction may be run again. */
  private Written write(Tables tables, Batch batch) {
    Sum begun = sum.fileId == NOT_BEGUN ? begun(tables) : sum;
    tables.files().quarantine(begun.fileId, batch.rejected);
    if (batch.samples.isEmpty()) {
      return new Written(begun, 0, () -> {});
    }
    Judging.Round round = judging.begin(tables);
    SampleWriter writer = new SampleWriter(tables, new Origin(begun.fileId, receivedAt));
    List<Came> changed = writer.write(batch.samples);
    changed.forEach(came -> round.changed(came.sample(), came.structure()));
    return new Written(
        begun.and(writer.arrivals(), writer.thinned()), changed.size(), round.judge());
  }

  private Sum begun(Tables tables) {
    long id = tables.files().begin(file.name(), file.source(), file.sender(), receivedAt);
    return new Sum(id, sum.arrivals, sum.thinned);
  }

  private void await() {
    Future<Written> before = underWay;
    underWay = null;
    if (before == null) {
      return;
    }
    try {
      done(before.get());
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException failure) {
        throw failure;
      }
      throw new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("stopped while a file was read", e);
    }
  }

  private void done(Written written) {
    sum = written.sum;
    written.afterwards.run();
    judging.tellJudged(written.changed, receivedAt);
  }
}
