package dev.filmward.pipeline;

import dev.filmward.pipeline.SampleWriter.Came;
import dev.filmward.store.FileEntry.Arrivals;
import dev.filmward.store.QuarantinedRow;
import dev.filmward.store.SampleTable.Origin;
import dev.filmward.store.Store;
import dev.filmward.store.Tables;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;

/**
 * Writes what a file gives, a batch a transaction, on a thread of its own while the file is read
 * on; never more than one batch ahead, so that memory stays bounded. The last batch, and so every
 * small file, is written on the thread that reads. For that one thread.
 */
final class BatchWriter implements AutoCloseable {
  private final Store store;
  private final Judging judging;
  private final Origin origin;
  private @Nullable ExecutorService thread;
  private @Nullable Future<Written> underWay;
  private Arrivals arrivals = new Arrivals(0, 0, 0);
  private long thinned;

  BatchWriter(Store store, Judging judging, Origin origin) {
    this.store = store;
    this.judging = judging;
    this.origin = origin;
  }

  /** What one transaction takes. */
  record Batch(List<Came> samples, List<QuarantinedRow> rejected) {
    Batch {
      samples = List.copyOf(samples);
      rejected = List.copyOf(rejected);
    }
  }

  private record Written(Arrivals arrivals, long thinned, int changed, Runnable afterwards) {}

  /** Begins to write a batch, once the one before it is written. */
  void begin(Batch batch) {
    await();
    if (thread == null) {
      thread = Executors.newSingleThreadExecutor(task -> new Thread(task, "import"));
    }
    underWay = thread.submit(() -> store.write(tables -> write(tables, batch)));
  }

  /** Writes the last batch, and comes back when all is written. */
  void finish(Batch batch) {
    await();
    if (!batch.samples.isEmpty() || !batch.rejected.isEmpty()) {
      done(store.write(tables -> write(tables, batch)));
    }
  }

  /** What the readings were to what was there. */
  Arrivals arrivals() {
    return arrivals;
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

  private Written write(Tables tables, Batch batch) {
    tables.files().quarantine(origin.fileId(), batch.rejected);
    Judging.Round round = judging.begin(tables);
    SampleWriter writer = new SampleWriter(tables, origin);
    List<Came> changed = writer.write(batch.samples);
    changed.forEach(came -> round.changed(came.sample(), came.structure()));
    return new Written(writer.arrivals(), writer.thinned(), changed.size(), round.judge());
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
    Arrivals more = written.arrivals;
    arrivals =
        new Arrivals(
            arrivals.fresh() + more.fresh(),
            arrivals.known() + more.known(),
            arrivals.corrected() + more.corrected());
    thinned += written.thinned;
    written.afterwards.run();
    judging.tellJudged(written.changed, origin.receivedAt());
  }
}
