package dev.filmward.web;

import dev.filmward.web.EventStream.Event;
import io.javalin.http.sse.SseClient;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.RejectedExecutionException;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One open page. Events wait in a short queue and are written one after another; a page whose queue
 * is full is cut off. Thread-safe.
 */
final class Subscriber {
  private static final Logger LOG = LoggerFactory.getLogger(Subscriber.class);

  /** As many as are kept for catching up, and a few more. */
  private static final int LONGEST_QUEUE = EventStream.KEPT + 100;

  private final SseClient client;
  private final ExecutorService writers;
  private final StreamTally tally;
  private final BooleanSupplier isWelcome;
  private final Deque<Runnable> waiting = new ArrayDeque<>();
  private boolean writing;

  Subscriber(
      SseClient client, ExecutorService writers, StreamTally tally, BooleanSupplier isWelcome) {
    this.client = client;
    this.tally = tally;
    this.writers = writers;
    this.isWelcome = isWelcome;
  }

  boolean isWelcome() {
    return isWelcome.getAsBoolean();
  }

  void offer(Event event) {
    enqueue(
        () -> {
          client.sendEvent(event.name(), event.data(), event.id());
          tally.eventDelivered();
        });
  }

  void beat() {
    enqueue(() -> client.sendComment("still here"));
  }

  /** Closes after the event that is being written; what waits is left out. */
  void finish() {
    synchronized (waiting) {
      waiting.clear();
      enqueue(client::close);
    }
  }

  /** Closes at once, even in the middle of a write. */
  void close() {
    client.close();
  }

  private void enqueue(Runnable write) {
    synchronized (waiting) {
      if (waiting.size() >= LONGEST_QUEUE) {
        tally.pageDropped();
        client.close();
        waiting.clear();
        return;
      }
      waiting.addLast(write);
      if (!writing) {
        writing = true;
        start();
      }
    }
  }

  private void start() {
    try {
      writers.execute(this::writeAll);
    } catch (RejectedExecutionException stopping) {
      writing = false;
    }
  }

  private void writeAll() {
    try {
      for (Runnable write = next(); write != null; write = next()) {
        if (!client.terminated()) {
          write.run();
        }
      }
    } catch (RuntimeException e) {
      LOG.debug("A page went away while it was written to", e);
      client.close();
    }
  }

  private @Nullable Runnable next() {
    synchronized (waiting) {
      Runnable write = waiting.pollFirst();
      writing = write != null;
      return write;
    }
  }
}
