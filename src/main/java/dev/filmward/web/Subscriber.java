package dev.filmward.web;

import dev.filmward.web.EventStream.Event;
import io.javalin.http.sse.SseClient;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One open page. Events wait in a short queue, and all that wait are written together; a page whose
 * queue is full is cut off. Thread-safe.
 */
final class Subscriber {
  private static final Logger LOG = LoggerFactory.getLogger(Subscriber.class);

  /** As many as are kept for catching up, and a few more. */
  private static final int LONGEST_QUEUE = EventStream.KEPT + 100;

  /** With no more than this before its last event, a write is not cut. */
  private static final int BYTES_AT_ONCE = 1 << 16;

  private final SseClient client;
  private final EventWriters writers;
  private final StreamTally tally;
  private final BooleanSupplier isWelcome;
  private final Deque<Event> waiting = new ArrayDeque<>();
  private boolean isDue;
  private boolean beats;
  private boolean ends;

  Subscriber(SseClient client, EventWriters writers, StreamTally tally, BooleanSupplier isWelcome) {
    this.client = client;
    this.tally = tally;
    this.writers = writers;
    this.isWelcome = isWelcome;
  }

  boolean isWelcome() {
    return isWelcome.getAsBoolean();
  }

  void offer(Event event) {
    synchronized (waiting) {
      if (waiting.size() < LONGEST_QUEUE) {
        waiting.addLast(event);
        beDue();
        return;
      }
      waiting.clear();
    }
    tally.pageDropped();
    client.close();
  }

  void beat() {
    synchronized (waiting) {
      beats = true;
      beDue();
    }
  }

  /** Closes after the events that are being written; what waits is left out. */
  void finish() {
    synchronized (waiting) {
      waiting.clear();
      ends = true;
      beDue();
    }
  }

  /** Closes at once, even in the middle of a write. */
  void close() {
    client.close();
  }

  /** Writes what waits; one thread at a time, as {@link EventWriters} see to. */
  void write() {
    Piece piece = next();
    try {
      if (!client.terminated()) {
        write(piece);
      }
    } catch (IOException | RuntimeException e) {
      LOG.debug("A page went away while it was written to", e);
      client.close();
    }
    if (piece.isLast) {
      client.close();
    }
    goOn();
  }

  /** What is written at once. */
  private record Piece(List<Event> events, boolean isBeat, boolean isLast) {}

  private Piece next() {
    synchronized (waiting) {
      List<Event> events = new ArrayList<>();
      int bytes = 0;
      while (!waiting.isEmpty() && bytes < BYTES_AT_ONCE) {
        events.add(waiting.removeFirst());
        bytes += events.get(events.size() - 1).length();
      }
      boolean isBeat = beats && events.isEmpty();
      beats = false;
      return new Piece(events, isBeat, ends);
    }
  }

  private void write(Piece piece) throws IOException {
    if (piece.isBeat) {
      client.sendComment("still here");
    } else if (!piece.events.isEmpty()) {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      piece.events.forEach(event -> event.writeTo(bytes));
      client.ctx().res().getOutputStream().write(bytes.toByteArray());
      client.ctx().res().flushBuffer();
      tally.eventsDelivered(piece.events.size());
    }
  }

  /** What came during a write is written after it. */
  private void goOn() {
    synchronized (waiting) {
      isDue = false;
      boolean isMore = !waiting.isEmpty() || beats || ends;
      if (isMore && !client.terminated()) {
        beDue();
      }
    }
  }

  private void beDue() {
    if (!isDue) {
      isDue = true;
      writers.due(this);
    }
  }
}
