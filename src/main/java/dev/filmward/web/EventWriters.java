package dev.filmward.web;

import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * Writes to open pages what waits for them: at once after a quiet time, else all that came within
 * {@value #GAP_MS} ms in one write for each page, so that many events cost many pages little. One
 * thread writes to one page after another; where it is held up by one, another thread goes on with
 * the rest after the same time. Thread-safe.
 */
final class EventWriters {
  static final int GAP_MS = 100;

  private final Queue<Subscriber> due = new ConcurrentLinkedQueue<>();
  private final ExecutorService threads =
      Executors.newCachedThreadPool(task -> daemon(task, "event-writer"));
  private final ScheduledExecutorService clock =
      Executors.newSingleThreadScheduledExecutor(task -> daemon(task, "event-clock"));
  private final AtomicBoolean isPlanned = new AtomicBoolean();
  private volatile long lastRoundAt = System.nanoTime() - TimeUnit.MILLISECONDS.toNanos(GAP_MS);

  /** Takes a page for which something waits, until it was written to. */
  void due(Subscriber subscriber) {
    due.add(subscriber);
    plan();
  }

  private void plan() {
    if (isPlanned.compareAndSet(false, true)) {
      long next = lastRoundAt + TimeUnit.MILLISECONDS.toNanos(GAP_MS);
      try {
        ScheduledFuture<?> unused =
            clock.schedule(
                this::round, Math.max(0, next - System.nanoTime()), TimeUnit.NANOSECONDS);
      } catch (RejectedExecutionException stopping) {
        isPlanned.set(false);
      }
    }
  }

  private void round() {
    isPlanned.set(false);
    if (!due.isEmpty()) {
      lastRoundAt = System.nanoTime();
      start();
      plan();
    }
  }

  private void start() {
    try {
      threads.execute(this::writeAll);
    } catch (RejectedExecutionException stopping) {
      due.clear();
    }
  }

  private void writeAll() {
    for (Subscriber next = due.poll(); next != null; next = due.poll()) {
      next.write();
    }
  }

  /**
   * Writes what waits now, and stops.
   *
   * @return whether all was written within the time
   */
  boolean stop(int withinMs) throws InterruptedException {
    clock.shutdownNow();
    start();
    threads.shutdown();
    return threads.awaitTermination(withinMs, TimeUnit.MILLISECONDS);
  }

  /** Breaks off what is still being written. */
  void breakOff() {
    threads.shutdownNow();
  }

  static Thread daemon(Runnable task, String name) {
    Thread thread = new Thread(task, name);
    thread.setDaemon(true);
    return thread;
  }
}
